import type { ComponentChildren } from 'preact';
import type { Caller } from '../use-cases/caller.js';
import { stylesheetPath } from './assets/stylesheet.js';

/** The doors of the house, in the order they stand in the head of every page. */
const DOORS = [
  { name: 'Gate', href: '/' },
  { name: 'Trailers', href: '/trailers' },
  { name: 'Jobs', href: '/jobs' },
  { name: 'Time line', href: '/timeline' },
  { name: 'Check fit', href: '/fit' },
  { name: 'Load check', href: '/load' },
  { name: 'Due', href: '/due' },
  { name: 'Flags', href: '/flags' },
  { name: 'Notices', href: '/notices' },
  { name: 'Yard', href: '/yard' },
  { name: 'People', href: '/people' },
] as const;

type DoorName = (typeof DOORS)[number]['name'];

interface PageProps {
  readonly title: string;
  /** Null before sign-in: the page then shows no doors. */
  readonly caller: Pick<Caller, 'name' | 'role'> | null;
  /** The door this page stands behind; `page` when it is the door itself. */
  readonly door?: DoorName | undefined;
  readonly at?: 'page' | 'below' | undefined;
  /** A sentence about what was just done, shown once. */
  readonly said?: string | null | undefined;
  /** Narrow column, for sign-in and short forms. */
  readonly narrow?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** The frame around every screen. */
export function Page({ title, caller, door, at = 'page', said, narrow, children }: PageProps) {
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="theme-color" content="#2a343a" />
        <title>{title === 'Axlebook' ? title : `${title} · Axlebook`}</title>
        <link rel="icon" href="/favicon.svg" type="image/svg+xml" />
        <link rel="stylesheet" href={stylesheetPath()} />
      </head>
      <body>
        <a class="skip" href="#main">
          Skip to the page
        </a>
        <header class="board">
          <div class="board-in">
            <div class="board-top">
              <a class="brand" href="/">
                <span class="lamps" aria-hidden="true">
                  <i />
                  <i />
                  <i />
                </span>
                Axlebook
              </a>
              {caller && <Who caller={caller} />}
            </div>
            {caller && <Doors door={door} at={at} />}
          </div>
          <div class="tape" />
        </header>
        <main id="main" class={narrow ? 'main narrow' : 'main'} tabindex={-1}>
          {said && (
            <p class="said" role="status">
              {said}
            </p>
          )}
          {children}
        </main>
        <footer class="foot">
          <p>Axlebook keeps the log and does the sums. It inspects nothing and certifies nothing.</p>
        </footer>
      </body>
    </html>
  );
}

function Who({ caller }: { readonly caller: Pick<Caller, 'name' | 'role'> }) {
  return (
    <form class="who" method="post" action="/sign-out">
      <span class="who-name">
        {caller.name}, {caller.role}
      </span>
      <button type="submit">Sign out</button>
    </form>
  );
}

function Doors({ door, at }: { readonly door: DoorName | undefined; readonly at: 'page' | 'below' }) {
  return (
    <nav aria-label="Doors">
      <ul class="doors">
        {DOORS.map(({ name, href }) => (
          <li key={href}>
            <a href={href} aria-current={name === door ? (at === 'page' ? 'page' : 'true') : undefined}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

interface HeadProps {
  readonly title: ComponentChildren;
  readonly lede?: ComponentChildren;
  readonly children?: ComponentChildren;
}

/** Title of a screen, a line under it, and what can be done from here. */
export function Head({ title, lede, children }: HeadProps) {
  return (
    <div class="head">
      <div class="head-words">
        <h1>{title}</h1>
        {lede && <p class="lede">{lede}</p>}
      </div>
      {children && <div class="actions">{children}</div>}
    </div>
  );
}
