/** Catches what breaks in a view: a plain word about it, and the work is kept. */
import { Component, type ComponentChildren, type VNode } from 'preact'
import { Button, Notice } from '../kit/index.ts'

interface Props {
  readonly children: ComponentChildren
}

export class Guard extends Component<Props, { readonly broke?: string | undefined }> {
  override state: { readonly broke?: string | undefined } = {}

  override componentDidCatch(thrown: unknown): void {
    this.setState({ broke: thrown instanceof Error ? thrown.message : String(thrown) })
  }

  override render(): ComponentChildren {
    const { broke } = this.state
    return broke === undefined ? (
      this.props.children
    ) : (
      <Broken says={broke} again={() => this.setState({ broke: undefined })} />
    )
  }
}

function Broken({ says, again }: { readonly says: string; readonly again: () => void }): VNode {
  return (
    <>
      <h1 tabIndex={-1}>Something broke</h1>
      <Notice sort="wrong" title="Something in this view broke" urgent>
        <p>
          That is a mistake of this program. Your work is kept: you can undo, go to another view or save it
          under Files.
        </p>
        <p>
          What it said: <code>{says}</code>
        </p>
        <p class="buttons">
          <Button says="Show the view again" onPress={again} sort="main" />
          <Button says="Load the page again" onPress={() => location.reload()} />
        </p>
      </Notice>
    </>
  )
}
