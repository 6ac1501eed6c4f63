/**
 * The part of the layout library that is used, in its own words (the ELK graph format). Its published types do not
 * pass this project's checks; the compiler takes these in their place (`paths` in tsconfig.json).
 */
export interface ElkNode {
  readonly id: string
  readonly x?: number
  readonly y?: number
  readonly width?: number
  readonly height?: number
  readonly children?: readonly ElkNode[]
  readonly ports?: readonly ElkNode[]
  readonly edges?: readonly ElkEdge[]
  readonly layoutOptions?: Readonly<Record<string, string>>
}

export interface ElkPoint {
  readonly x: number
  readonly y: number
}

export interface ElkEdge {
  readonly id: string
  readonly sources: readonly string[]
  readonly targets: readonly string[]
  readonly sections?: readonly {
    readonly startPoint: ElkPoint
    readonly endPoint: ElkPoint
    readonly bendPoints?: readonly ElkPoint[]
  }[]
  readonly layoutOptions?: Readonly<Record<string, string>>
}

export default class Elk {
  constructor(options?: { readonly workerFactory?: (url?: string) => unknown })
  layout(graph: ElkNode): Promise<ElkNode>
  terminateWorker(): void
}
