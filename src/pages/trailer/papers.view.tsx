import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import type { Typed } from '../components/field.js';
import { IdentityFields } from '../trailers/identity-fields.js';
import { TrailerFormPage } from './trailer-form-page.js';

interface PapersProps {
  readonly caller: Caller;
  readonly trailer: TrailerFormScreen['trailer'];
  readonly typed: Typed;
}

export function PapersPage({ caller, trailer, typed }: PapersProps) {
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title="Papers"
      typed={typed}
      action={`/trailers/${trailer.id}/papers`}
      submit="Save the papers"
    >
      <IdentityFields typed={typed} />
    </TrailerFormPage>
  );
}
