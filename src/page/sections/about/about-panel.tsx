import { useEffect } from 'preact/hooks';
import { Panel } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';

/** What this page is, and whose work is in it: the build puts the notices into a template of the document, where no script carries them. */
export function AboutPanel() {
  // Its button is at the end of another panel; a small screen would show the middle of this one.
  useEffect(() => window.scrollTo(0, 0), []);
  const words = useStore().texts.value.about;
  const notices = document.querySelector<HTMLTemplateElement>('#notices')?.content.textContent ?? '';
  return (
    <Panel name="about" heading={words.heading}>
      <p>{words.own}</p>
      <h3>{words.others}</h3>
      <pre class="notices" lang="en">
        {notices}
      </pre>
    </Panel>
  );
}
