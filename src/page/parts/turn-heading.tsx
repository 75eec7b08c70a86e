/** The heading of a turn with its number. */
export function Heading({ number, id, text }: { readonly number: number; readonly id: string; readonly text: string }) {
  return (
    <h2 id={id} tabIndex={-1}>
      <span class="step" aria-hidden="true">
        {number}
      </span>
      {text}
    </h2>
  );
}
