/** How the sockets feed each other, as a list within a list, and the sets that are plugged in. */
import type { VNode } from 'preact'
import type { StandingPlace, Stands } from '../../../index.ts'
import { type SocketNode, socketTree } from './rows.ts'

export interface SocketsProps {
  readonly stands: Stands
  readonly chosen: string | undefined
  readonly onChoose: (place: string) => void
}

export function Sockets({ stands, chosen, onChoose }: SocketsProps): VNode {
  const { roots, loose } = socketTree(stands)
  const set = (one: StandingPlace): VNode => (
    <li key={one.place} class="standing">
      <button
        type="button"
        class="button place"
        aria-pressed={one.place === chosen}
        onClick={() => onChoose(one.place)}
      >
        <strong>{one.place}</strong> {one.rewire ?? one.set}
        {one.reversed ? ', reversed' : ''}
        {one.rests === 'on-hook' ? '' : `, ${one.rests}`}
      </button>
    </li>
  )
  const node = ({ socket, feeds, sets }: SocketNode): VNode => (
    <li key={socket.socket} class="socket">
      <p class="socket-name">
        <svg class="socket-shape" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
          <rect class="outline" x="3" y="3" width="18" height="18" rx={socket.is === 'master' ? 0 : 9} />
          {socket['ringing lead'] ? (
            <path class="inside" d="M8 8v8M12 8v8M16 8v8" />
          ) : (
            <path class="inside" d="M9 8v8M15 8v8" />
          )}
        </svg>
        <strong>{socket.socket}</strong> {socket.is}
        {socket['ringing lead'] ? '; a, b and ringing lead' : '; a and b only, no ringing lead'}
        {socket.earth ? '; earth' : ''}
        {socket.mirrored ? '; made up by the mirrored numbering' : ''}
      </p>
      {sets.length + feeds.length === 0 ? null : (
        <ul class="hangs">
          {sets.map(set)}
          {feeds.map(node)}
        </ul>
      )}
    </li>
  )
  return (
    <section class="sockets" aria-labelledby="sockets-title">
      <h2 id="sockets-title">What feeds what</h2>
      <ul class="tree">
        <li class="line-in">
          <p class="socket-name">
            {stands.line === null ? 'No line' : 'The line '}
            <strong>{stands.line}</strong>
          </p>
          <ul class="hangs">{roots.map(node)}</ul>
        </li>
      </ul>
      {loose.length === 0 ? null : (
        <>
          <p>On the line without a socket</p>
          <ul class="hangs">{loose.map(set)}</ul>
        </>
      )}
    </section>
  )
}
