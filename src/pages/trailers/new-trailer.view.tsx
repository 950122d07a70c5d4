import type { Caller } from '../../use-cases/caller.js';
import type { Typed } from '../components/field.js';
import { WrongList } from '../components/field.js';
import { Head, Page } from '../page.js';
import { BuildFields } from './build-fields.js';
import { IdentityFields } from './identity-fields.js';
import { TireFields } from './tire-fields.js';

interface NewTrailerProps {
  readonly caller: Caller;
  readonly typed: Typed;
}

/** One form, in sections: from the plate and the sidewalls in about ten minutes. */
export function NewTrailerPage({ caller, typed }: NewTrailerProps) {
  return (
    <Page title="Add a trailer" caller={caller} door="Trailers" at="below">
      <Head
        title="Add a trailer"
        lede="Walk around it with this page. Nothing is guessed: an empty field is an unknown, and an unknown is listed with what it stops."
      />
      <form class="form" method="post" action="/trailers/new">
        <WrongList typed={typed} />
        <IdentityFields typed={typed} />
        <BuildFields typed={typed} />
        <TireFields typed={typed} />
        <div class="actions sticky-actions">
          <button class="button button-main" type="submit">
            Add the trailer
          </button>
          <a class="button" href="/trailers">
            Leave without adding
          </a>
        </div>
      </form>
    </Page>
  );
}
