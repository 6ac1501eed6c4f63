/** Impedances as lists of elements in series, `{beside: […]}` in parallel. */
import * as z from 'zod/mini'
import type { ImpedanceItem } from '../parts/exchange.ts'
import { type Dimension, type Quantity, readQuantity } from '../quantities/quantity.ts'
import { list, says } from './schema-fields.ts'

/** A quantity of whichever of these dimensions its unit is; the first one words the refusal. */
export function quantityOf(
  dimensions: readonly [Dimension, ...Dimension[]],
  example: string,
): z.ZodMiniType<Quantity> {
  const written = says(z.union([z.string(), z.number()]), `a quantity such as ${example}`, {
    examples: [example],
  })
  return z.pipe(
    written,
    z.transform((value, context) => {
      const results = dimensions.map((dimension) => readQuantity(String(value), dimension))
      const read =
        results.find((result) => result.ok) ??
        results.find((result) => !result.ok && result.fault.code !== 'unit-wrong')
      const chosen = read ?? results[0]
      if (chosen?.ok === true) return chosen.quantity
      context.issues.push({
        code: 'custom',
        input: value,
        message: example,
        params: { problem: chosen?.fault },
      })
      return z.NEVER
    }),
  ) as unknown as z.ZodMiniType<Quantity>
}

const item: z.ZodMiniType<ImpedanceItem> = z.lazy(() =>
  z.union([
    z.strictObject({ beside: list(item, 'elements side by side', 2) }),
    quantityOf(['resistance', 'capacitance', 'inductance'], '600 Ω'),
  ]),
) as unknown as z.ZodMiniType<ImpedanceItem>

/** Elements in series. */
export const impedance: z.ZodMiniType<ImpedanceItem[]> = list(item, 'elements in series', 1)
