import { renderToString } from 'preact-render-to-string';
import { Page } from './page.js';

interface FailurePageProps {
  readonly title: string;
  readonly text: string;
}

/** The page for a request that could not be answered: what happened, what to do, and the way back. */
export function failurePage({ title, text }: FailurePageProps): string {
  const page = (
    <Page title={title} caller={null} narrow>
      <h1>{title}</h1>
      <p>{text}</p>
      <p>
        <a href="/">Back to the gate</a>
      </p>
    </Page>
  );
  return `<!doctype html>${renderToString(page)}`;
}
