import juice from 'juice';
import { renderToStaticMarkup } from 'preact-render-to-string';
import type { Entry, Paper, Section } from './paper.js';

/**
 * The letter as HTML. Every style is also written into the elements, because many mail programs drop style sheets;
 * the sheet stays for what cannot be inlined: dark mode and narrow screens. No picture, no font and no address is
 * loaded from anywhere, so that opening a letter tells nobody.
 */
export function letterHtml(paper: Paper): string {
  return `<!doctype html>\n${juice(renderToStaticMarkup(<LetterPage paper={paper} />), { preserveImportant: true })}`;
}

/**
 * Galvanized grey for the frame, the red of reflective tape for `stop`, the amber of clearance lamps for `first`.
 * Contrast of every text on its ground is at least 4.5 to 1 (WCAG 2.2, 1.4.3), light and dark.
 */
const STYLES = `
body { margin: 0; padding: 0; background: #e6e9eb; color: #1d2429; font-family: -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; font-size: 16px; line-height: 1.5; }
.preview { display: none; max-height: 0; overflow: hidden; }
.ground { background: #e6e9eb; }
.sheet { max-width: 600px; margin: 0 auto; background: #ffffff; overflow-wrap: anywhere; }
.head { padding: 14px 20px; background: #4a555d; color: #ffffff; font-weight: 600; }
.body { padding: 20px; }
p { margin: 0 0 12px; }
h2 { margin: 24px 0 12px; font-size: 14px; letter-spacing: 0.06em; text-transform: uppercase; color: #4a555d; }
.entry { margin: 0 0 16px; padding: 14px 16px; border: 1px solid #c4ccd1; border-left: 6px solid #7d8a93; background: #ffffff; }
.entry-first { border-left-color: #b86e00; }
.entry-stop { border-left-color: #b3261e; }
h3 { margin: 0 0 8px; font-size: 18px; line-height: 1.3; color: #1d2429; }
.mark { display: inline-block; margin: 0 0 10px; padding: 2px 10px; font-weight: 700; font-size: 14px; background: #e6e9eb; color: #1d2429; }
.mark-first { background: #ffe3b3; color: #4d2f00; }
.mark-stop { background: #b3261e; color: #ffffff; }
ul { margin: 0 0 12px; padding: 0 0 0 22px; }
li { margin: 0 0 6px; }
.facts { width: 100%; margin: 0 0 12px; border-collapse: collapse; font-size: 15px; }
.facts th { padding: 3px 12px 3px 0; text-align: left; vertical-align: top; font-weight: 600; color: #4a555d; white-space: nowrap; }
.facts td { padding: 3px 0; text-align: left; vertical-align: top; }
a { color: #0b5394; }
.button { display: inline-block; padding: 12px 20px; background: #0b5394; color: #ffffff; font-weight: 600; text-decoration: none; }
.foot { padding: 0 20px 20px; font-size: 14px; color: #4a555d; }
`;

const KEPT = `
:root { color-scheme: light dark; supported-color-schemes: light dark; }
@media (max-width: 420px) {
  .body { padding: 16px !important; }
  .facts th, .facts td { display: block !important; padding: 0 !important; }
  .facts td { padding-bottom: 6px !important; }
}
@media (prefers-color-scheme: dark) {
  body, .ground { background: #14191c !important; }
  .sheet, .entry { background: #1f262b !important; color: #e9edf0 !important; }
  .sheet, .body, h3, p, li, .facts td { color: #e9edf0 !important; }
  h2, .facts th, .foot, .foot p { color: #b9c3ca !important; }
  .entry { border-top-color: #46525a !important; border-right-color: #46525a !important; border-bottom-color: #46525a !important; }
  .entry-first { border-left-color: #ffb648 !important; }
  .entry-stop { border-left-color: #ff6b5e !important; }
  .mark { background: #37424a !important; color: #ffffff !important; }
  .mark-first { background: #ffe3b3 !important; color: #4d2f00 !important; }
  .mark-stop { background: #b3261e !important; color: #ffffff !important; }
  a { color: #8ec5ff !important; }
  .button { background: #8ec5ff !important; color: #0a2238 !important; }
}
`;

function LetterPage({ paper }: { readonly paper: Paper }) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{paper.subject}</title>
        <style dangerouslySetInnerHTML={{ __html: STYLES }} />
        <style data-embed="" dangerouslySetInnerHTML={{ __html: KEPT }} />
      </head>
      <body>
        <div class="preview">{paper.preview}</div>
        <div class="ground">
          <div class="sheet">
            <div class="head">{paper.yardName}</div>
            <div class="body">
              <p>{paper.greeting}</p>
              {paper.opening.map((line) => (
                <p key={line}>{line}</p>
              ))}
              {paper.summary.length === 0 ? null : (
                <ul>
                  {paper.summary.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              )}
              {paper.sections.map((section) => (
                <SectionBlock key={section.heading} section={section} />
              ))}
              {paper.button === null ? null : (
                <p>
                  <a class="button" href={paper.button.url}>
                    {paper.button.text}
                  </a>
                </p>
              )}
            </div>
            <div class="foot">
              {paper.closing.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          </div>
        </div>
      </body>
    </html>
  );
}

function SectionBlock({ section }: { readonly section: Section }) {
  return (
    <div>
      <h2>{section.heading}</h2>
      {section.entries.map((entry) => (
        <EntryBlock key={entry.title} entry={entry} />
      ))}
    </div>
  );
}

function EntryBlock({ entry }: { readonly entry: Entry }) {
  return (
    <div class={`entry entry-${entry.tone}`}>
      <h3>{entry.title}</h3>
      {entry.mark === null ? null : <div class={`mark mark-${entry.tone}`}>{entry.mark}</div>}
      {entry.says.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {entry.todo.length === 0 ? null : (
        <ul>
          {entry.todo.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ul>
      )}
      {entry.facts.length === 0 ? null : (
        <table class="facts">
          <tbody>
            {entry.facts.map(({ label, text }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {entry.link === null ? null : (
        <p>
          <a href={entry.link.url}>{entry.link.text}</a>
        </p>
      )}
    </div>
  );
}
