import type { Caller } from '../../use-cases/caller.js';
import type { Problem } from '../../use-cases/outcome.js';
import { Head, Page } from '../page.js';

interface ProblemPageProps {
  readonly caller: Pick<Caller, 'name' | 'role'> | null;
  readonly problem: Problem;
}

/** Why nothing was done, when there is no form to show again. */
export function ProblemPage({ caller, problem }: ProblemPageProps) {
  const { title, lede } = words(problem);
  return (
    <Page title={title} caller={caller} narrow>
      <Head title={title} lede={lede} />
      {problem.kind === 'invalid' && (
        <ul class="plain">
          {problem.fields.map(({ field, message }) => (
            <li key={field}>{message}</li>
          ))}
        </ul>
      )}
      <p class="actions">
        <a class="button" href="/">
          Back to the gate
        </a>
      </p>
    </Page>
  );
}

function words(problem: Problem): { readonly title: string; readonly lede: string } {
  switch (problem.kind) {
    case 'not-found':
      return { title: 'Not in this yard', lede: `This yard has no such ${problem.what}. The link may be old.` };
    case 'not-allowed':
      return {
        title: 'Not with your role',
        lede: `This takes the role “${problem.needs}”. An owner of the yard can change roles under People.`,
      };
    case 'conflict':
      return { title: 'That does not go together', lede: problem.message };
    case 'invalid':
      return {
        title: 'Something was not understood',
        lede: 'Nothing was saved. Go back, mend this, and send it again:',
      };
  }
}
