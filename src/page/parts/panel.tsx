import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Panel as PanelName } from '../store.ts';
import { focusNext } from './focus.ts';
import { useStore } from './store-context.ts';

/** What opens in the middle column and gives it back: by its x and by Escape, and the focus returns to the button that opened it. */
export function Panel({
  name,
  heading,
  children,
}: {
  readonly name: PanelName;
  readonly heading: string;
  readonly children: ComponentChildren;
}) {
  const store = useStore();
  const { texts } = store;
  const root = useRef<HTMLElement>(null);
  // At once: Escape pressed right after opening must find the focus inside.
  useLayoutEffect(() => {
    // A field inside may have been gone to already.
    if (!root.current?.contains(document.activeElement)) document.getElementById('panel-heading')?.focus();
  }, []);
  return (
    <section
      class="panel"
      id={`panel-${name}`}
      aria-labelledby="panel-heading"
      ref={root}
      onKeyDown={(event) => {
        if (event.key === 'Escape') closePanel(store);
      }}
    >
      <div class="panel-head">
        <h2 id="panel-heading" tabIndex={-1}>
          {heading}
        </h2>
        <button type="button" class="close" id="panel-close" aria-label={texts.value.head.close} onClick={() => closePanel(store)}>
          <span aria-hidden="true">×</span>
        </button>
      </div>
      {children}
    </section>
  );
}

export function closePanel(store: ReturnType<typeof useStore>): void {
  const open = store.panel.peek();
  store.panel.value = null;
  // A button in the menu of a narrow screen is out of sight once the menu is closed; the menu's own stands in for it.
  if (open) focusNext(document.getElementById(`open-${open}`)?.checkVisibility() === false ? 'menu' : `open-${open}`);
}

/** The button that opens a panel. */
export function PanelButton({
  name,
  children,
  class: className,
}: {
  readonly name: PanelName;
  readonly children: ComponentChildren;
  readonly class?: string;
}) {
  const store = useStore();
  const isOpen = store.panel.value === name;
  return (
    <button
      type="button"
      id={`open-${name}`}
      class={className}
      aria-expanded={isOpen}
      onClick={() => {
        store.panel.value = isOpen ? null : name;
        store.menu.value = false;
      }}
    >
      {children}
    </button>
  );
}
