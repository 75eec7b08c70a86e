import { Component, type ComponentChildren } from 'preact';

interface StillProps {
  /** What the drawing hangs on; while all of these are the same, it is left as it is. */
  readonly of: readonly unknown[];
  readonly draw: () => ComponentChildren;
  /** Leave it as it is for now, whatever changed. */
  readonly hold?: boolean;
}

/** A part of the page that is drawn anew only when something it shows has changed: typing in one field must not redraw everything. */
export class Memo extends Component<StillProps> {
  override shouldComponentUpdate(next: StillProps): boolean {
    if (next.hold === true) return false;
    return next.of.length !== this.props.of.length || next.of.some((value, k) => value !== this.props.of[k]);
  }

  render(): ComponentChildren {
    return this.props.draw();
  }
}
