/** Why: every finding beside what the first and the next lead to expect, and in what these differ. */
import type { ComponentChildren, VNode } from 'preact'
import { type IdentifyAnswer, identifySaid } from '../../../index.ts'
import { Scroller } from '../../kit/scroller.tsx'

export function Reasons({ answer }: { readonly answer: IdentifyAnswer }): VNode {
  return (
    <>
      <Findings answer={answer} />
      <Differences answer={answer} />
      <Hidden answer={answer} />
      <Unread answer={answer} />
      <Straps answer={answer} />
    </>
  )
}

const nameOf = ({ groups }: IdentifyAnswer, at: number): string => groups[at]?.sets[0]?.name ?? ''

function Findings({ answer }: { readonly answer: IdentifyAnswer }): VNode | null {
  const { findings, groups } = answer
  if (findings.length === 0) return null
  const fits = (one: (typeof findings)[number]['first'] | undefined): string =>
    `${identifySaid(one ?? {})}${one?.agrees === false ? ' (does not fit)' : ''}`
  return (
    <Table
      title="Why"
      heads={['Found', 'On the bench', ...groups.slice(0, 2).map((_, k) => nameOf(answer, k))]}
      rows={findings.map((one) => [
        one.id,
        identifySaid(one),
        ...(groups.length > 0 ? [fits(one.first)] : []),
        ...(groups.length > 1 ? [fits(one.next)] : []),
      ])}
    >
      {findings.map(({ id, weak }) =>
        weak === undefined ? null : (
          <p key={id} class="soft">
            {id}: {weak}.
          </p>
        ),
      )}
      {answer['taken back'].map((one) => (
        <p key={one.id} class="soft">
          {one.id} was {identifySaid(one)} before; the last that you gave counts.
        </p>
      ))}
    </Table>
  )
}

/** Until one is more probable than all others together, what the first two differ in tells nothing of the rest. */
const CLEARLY = 0.5
const WORTH_TELLING = 0.01

function Differences({ answer }: { readonly answer: IdentifyAnswer }): VNode | null {
  const { differences, groups, findings, finds } = answer
  const [first, next] = groups
  if (findings.length === 0 || finds === 'unknown' || first === undefined || next === undefined) return null
  if (first.probability < CLEARLY || next.probability < WORTH_TELLING || differences.length === 0) return null
  return (
    <details class="folded">
      <summary>
        What {nameOf(answer, 0)} and {nameOf(answer, 1)} differ in ({differences.length})
      </summary>
      <Table
        title="By their sheets"
        heads={['What', nameOf(answer, 0), nameOf(answer, 1)]}
        rows={differences.map(({ what, first: one, other }) => [what, one, other])}
      />
    </details>
  )
}

function Hidden({ answer }: { readonly answer: IdentifyAnswer }): VNode | null {
  const { groups, findings, finds } = answer
  const [lead] = groups
  const isTold = finds === 'one' || finds === 'like-one'
  if (!isTold || lead === undefined || lead.hidden.length === 0 || findings.length === 0) return null
  return (
    <details class="folded">
      <summary>What nothing that may be asked shows</summary>
      <Table
        title="In what the sheets of this group differ"
        heads={['What', nameOf(answer, 0), 'Other', 'In']}
        rows={lead.hidden.map(({ set, what, first, other }) => [what, first, other, set])}
      />
    </details>
  )
}

function Unread({ answer }: { readonly answer: IdentifyAnswer }): VNode | null {
  const { unread, finds } = answer
  if ((finds !== 'one' && finds !== 'like-one') || unread.length === 0) return null
  return (
    <p>
      These straps of {nameOf(answer, 0)} were neither read nor seen, so that a change there has not shown:{' '}
      {unread.join(', ')}.
    </p>
  )
}

function Straps({ answer }: { readonly answer: IdentifyAnswer }): VNode | null {
  const { straps, finds } = answer
  const { groups, apart, contacts, against } = straps
  if (finds !== 'unknown' || groups.length + apart.length + contacts.length + against.length === 0)
    return null
  const pairs = (all: readonly (readonly [string, string])[]): string =>
    all.map((one) => one.join('–')).join(', ')
  const rows = [
    ['Joined', groups.map((group) => group.join('–')).join('; ')],
    ['Not joined', pairs(apart)],
    ['A contact', pairs(contacts)],
    ['Disagree, read again', pairs(against)],
  ].filter(([, text]) => text !== '')
  return (
    <section aria-labelledby="straps-title">
      <h2 id="straps-title">Straps that the readings imply</h2>
      <dl class="evidence">
        {rows.map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p class="soft">
        What is joined in the one condition that was read may be a strap or a closed contact: read it with the
        handset up and the dial off normal too.
      </p>
    </section>
  )
}

interface TableProps {
  readonly title: string
  readonly heads: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly children?: ComponentChildren
}

function Table({ title, heads, rows, children }: TableProps): VNode {
  return (
    <section class="reasons">
      <Scroller says={title}>
        <table>
          <caption>{title}</caption>
          <thead>
            <tr>
              {heads.map((one) => (
                <th key={one} scope="col">
                  {one}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([first = '', ...others]) => (
              <tr key={`${first} ${others.join(' ')}`}>
                <th scope="row">{first}</th>
                {others.map((one, k) => (
                  <td key={`${k} ${one}`}>{one}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
      {children}
    </section>
  )
}
