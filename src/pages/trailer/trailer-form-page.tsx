import type { ComponentChildren } from 'preact';
import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { type Typed, WrongList } from '../components/field.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';

interface TrailerFormPageProps {
  readonly caller: Caller;
  readonly trailer: TrailerFormScreen['trailer'];
  readonly title: string;
  readonly lede?: ComponentChildren;
  readonly typed: Typed;
  readonly action: string;
  readonly submit: string;
  /** A form that carries photos. */
  readonly multipart?: boolean;
  readonly children: ComponentChildren;
}

/** The frame of every form about one trailer: which one, what for, the form, and the way back. */
export function TrailerFormPage(props: TrailerFormPageProps) {
  const { caller, trailer, title, typed } = props;
  return (
    <Page title={`${title}, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below">
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} /> {title}
          </span>
        }
        lede={props.lede ?? trailer.name}
      />
      <form
        class="form"
        method="post"
        action={props.action}
        enctype={props.multipart ? 'multipart/form-data' : undefined}
      >
        <WrongList typed={typed} />
        {props.children}
        <div class="actions">
          <button class="button button-main" type="submit">
            {props.submit}
          </button>
          <a class="button" href={`/trailers/${trailer.id}`}>
            Back without saving
          </a>
        </div>
      </form>
    </Page>
  );
}
