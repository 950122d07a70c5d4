import type { Caller } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { DeckPicture } from '../pictures/deck-picture.js';
import { deckLifeWords } from '../words/deck-life-words.js';

/** How long the deck may still last, on what that rests, and what probing found, which beats it. */
export function DeckSection({ caller, screen }: { readonly caller: Caller; readonly screen: TrailerScreen }) {
  const { deckLife } = screen.assessment;
  const [first, ...rest] = deckLifeWords(deckLife, caller.today);
  if (first === undefined) return null;
  return (
    <section class="stack-tight" aria-labelledby="deck">
      <h2 class="chalked" id="deck">
        Deck
      </h2>
      <p>{first}</p>
      {deckLife.outlook !== null && deckLife.probed.soft.length === 0 && (
        <DeckPicture outlook={deckLife.outlook} today={caller.today} />
      )}
      {rest.length > 0 && (
        <ul class="small">
          {rest.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <HowWorkedOut workings={screen.workings.filter(({ of }) => of === 'deck-life')} what="life of the deck" />
      <p class="small">
        A forecast of how decks last, never of this one’s boards: probe them, and believe the probe. It is arithmetic on
        what was entered.
      </p>
    </section>
  );
}
