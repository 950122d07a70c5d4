import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import type { Machine } from '../../rules/facts/load.js';
import type { Newtons } from '../../rules/units/force.js';
import { showForce, showMass } from '../components/show-quantity.js';
import { loadedWords, sideWords } from '../words/picture-words.js';
import { at, Picture } from './picture.js';
import { type SideGeometry, type SideLoad, type SideMachine, sideGeometry, sideMachine } from './side-geometry.js';

interface SideViewProps {
  readonly build: BuildSheet;
  readonly yardNumber: string;
  readonly load: SideLoad | null;
}

/** The trailer from its left side, its front to the left, drawn to scale from its build sheet, with the load on it. */
export function SideView({ build, yardNumber, load }: SideViewProps) {
  const g = sideGeometry(build);
  const machine = load === null ? null : sideMachine(load.machine, load.balancePointM);
  // A machine longer than its trailer sticks out, and is drawn so.
  const left = Math.min(g.left, (machine?.front ?? 0) - 15);
  const right = Math.max(g.right, machine === null ? 0 : machine.front + machine.length + 15);
  const top = Math.max(g.top, machine === null ? 0 : g.deck.height + machine.height + 50);
  return (
    <Picture
      title={load === null ? `${yardNumber} from the side` : `${yardNumber} from the side with ${load.name} on it`}
      left={left}
      top={-top}
      width={right - left}
      height={top + (load === null ? 14 : 74)}
      isFolded={load !== null}
      words={
        <>
          {sideWords(build, g.drawnAsUsual)} {load !== null && loadedWords(load)}
        </>
      }
    >
      <path class="p-ground" d={`M${at(left)} 0H${at(right)}`} />
      <Rear build={build} g={g} />
      <Deck g={g} />
      <Front build={build} g={g} />
      {g.axles.map((axle) => (
        <Wheel key={axle.at} axle={axle} g={g} build={build} />
      ))}
      <Fender build={build} g={g} />
      {load !== null && machine !== null && <Aboard load={load} machine={machine} g={g} />}
      {load !== null && <Presses load={load} g={g} />}
    </Picture>
  );
}

function Deck({ g }: { readonly g: SideGeometry }) {
  const { front, rear, height, thick } = g.deck;
  const under = height - thick - g.frameDepth;
  return (
    <>
      <path
        class="p-steel"
        d={`M${at(front)} ${at(-height + thick)}H${at(g.flatRear)}L${at(rear)} ${at(-g.tailHeight + thick)}v${at(Math.min(g.frameDepth, g.tailHeight - 8) - 2)}L${at(g.flatRear)} ${at(-under)}H${at(front)}Z`}
      />
      <path
        class="p-plank"
        d={`M${at(front)} ${at(-height)}H${at(g.flatRear)}L${at(rear)} ${at(-g.tailHeight)}v${thick}L${at(g.flatRear)} ${at(-height + thick)}H${at(front)}Z`}
      />
      {g.tilt !== null && (
        <>
          <path class="p-dash" d={`M${at(g.tilt.from)} ${at(-height - 14)}v${at(thick + g.frameDepth + 22)}`} />
          <circle class="p-ink" cx={at(g.tilt.pivot)} cy={at(-under + 2)} r="9" />
          <path
            class="p-line"
            d={`M${at(g.tilt.pivot - 60)} ${at(-under + 14)}L${at(g.tilt.pivot)} ${at(-under + 2)}L${at(g.tilt.pivot - 60)} ${at(-under + 2)}`}
          />
        </>
      )}
    </>
  );
}

/** Tongue, coupler or neck, and the jack. */
function Front({ build, g }: { readonly build: BuildSheet; readonly g: SideGeometry }) {
  const { kind } = build.hitch;
  const { front, height } = g.deck;
  const jacks = build.jacks.count !== 0;
  if (kind === 'gooseneck') {
    const neck = Math.max(height + 55, 140);
    return (
      <>
        <path class="p-steel" d={`M-14 ${-neck}H${at(front + 26)}V${at(-height + 6)}h-22V${-neck + 22}H14V-118H-14Z`} />
        <path class="p-ink" d="M-9 -118H9L6 -100H-6Z" />
        {jacks && <Jack x={Math.max(g.jackAt, front - 18)} from={neck - 22} />}
      </>
    );
  }
  const y = -g.couplerHeight;
  const underDeck = -height + 6;
  return (
    <>
      <path
        class="p-steel"
        d={`M16 ${at(y - 6)}H${at(Math.max(front - 25, 30))}L${at(front + 12)} ${at(underDeck)}V${at(underDeck + g.frameDepth)}L${at(Math.max(front - 25, 30))} ${at(y + 8)}H16Z`}
      />
      {kind === 'pintle' ? (
        <circle class="p-ring" cx="4" cy={at(y)} r="10" />
      ) : (
        <path class="p-ink" d={`M18 ${at(y - 9)}H2a11 11 0 0 0 -11 13h10l4 5h13Z`} />
      )}
      {jacks && <Jack x={g.jackAt} from={g.couplerHeight + 30} />}
    </>
  );
}

function Jack({ x, from }: { readonly x: number; readonly from: number }) {
  return <path class="p-line" d={`M${at(x)} ${at(-from)}V-16M${at(x - 9)} -16h18M${at(x - 8)} ${at(-from)}h16`} />;
}

/** Ramps as they ride, and what holds the tail up while a machine climbs. */
function Rear({ build, g }: { readonly build: BuildSheet; readonly g: SideGeometry }) {
  const { ramps, stabilizers } = build.rear;
  const { rear, height } = g.deck;
  const under = -(height - g.deck.thick - g.frameDepth);
  const isStanding = ramps === 'stand-up' || ramps === 'stand-up-knee-brace';
  return (
    <>
      {isStanding && (
        <path
          class="p-ramp"
          d={`M${at(rear)} ${at(-g.tailHeight)}L${at(rear + 26)} ${at(-g.tailHeight - Math.sqrt(Math.max(g.rampLength ** 2 - 26 ** 2, 0)))}`}
        />
      )}
      {ramps === 'stand-up-knee-brace' && (
        <path class="p-line" d={`M${at(rear + 8)} ${at(-g.tailHeight - 30)}L${at(rear + 16)} -6`} />
      )}
      {(ramps === 'slide-out-rear' || ramps === 'slide-out-side') && (
        <path
          class={ramps === 'slide-out-side' ? 'p-ramp p-dash' : 'p-ramp'}
          d={`M${at(rear - 4)} ${at(under + 5)}h${at(-Math.min(g.rampLength, (rear - g.deck.front) * 0.7))}`}
        />
      )}
      {stabilizers === true && <path class="p-line" d={`M${at(rear - 16)} ${at(under)}V-14m-9 0h18`} />}
    </>
  );
}

interface WheelProps {
  readonly axle: SideGeometry['axles'][number];
  readonly g: SideGeometry;
  readonly build: BuildSheet;
}

function Wheel({ axle, g, build }: WheelProps) {
  const r = g.wheelRadius;
  const x = at(axle.at);
  return (
    <>
      {build.suspension === 'torsion' ? (
        <path class="p-line" d={`M${x} ${-r}L${at(axle.at - 17)} ${at(-r - 13)}`} />
      ) : (
        <path
          class="p-line"
          d={`M${at(axle.at - 36)} ${at(-r - 17)}Q${x} ${at(-r + 7)} ${at(axle.at + 36)} ${at(-r - 17)}`}
        />
      )}
      <circle class="p-tire" cx={x} cy={-r} r={r} />
      {axle.dual && <circle class="p-dual" cx={x} cy={-r} r={r - 7} />}
      <circle class="p-rim" cx={x} cy={-r} r={r * 0.55} />
      {axle.braked && <circle class="p-brake" cx={x} cy={-r} r={r * 0.36} />}
      <circle class="p-ink" cx={x} cy={-r} r="4" />
    </>
  );
}

function Fender({ build, g }: { readonly build: BuildSheet; readonly g: SideGeometry }) {
  const { kind } = build.fenders;
  const [first, last] = [g.axles[0], g.axles.at(-1)];
  if (kind === null || kind === 'none' || first === undefined || last === undefined) return null;
  const reach = g.wheelRadius + 12;
  const [from, to] = [first.at - reach, last.at + reach];
  const top = -(g.wheelRadius * 2 + 9);
  const shapes = {
    'double-broke': `M${at(from)} ${at(top + 28)}L${at(from + 22)} ${top}H${at(to - 22)}L${at(to)} ${at(top + 28)}`,
    teardrop: `M${at(from)} ${at(top + 34)}Q${at(from + 6)} ${top} ${at(first.at)} ${top}H${at(last.at)}Q${at(to - 6)} ${top} ${at(to + 10)} ${at(top + 34)}`,
    'drive-over': `M${at(from)} ${at(top + 12)}v-12H${at(to)}v12`,
  };
  return <path class={kind === 'drive-over' ? 'p-fender p-strong' : 'p-fender'} d={shapes[kind]} />;
}

/** The machine, its balance point as the quartered circle of drawings, and the best place as a chalk mark. */
function Aboard({
  load,
  machine,
  g,
}: {
  readonly load: SideLoad;
  readonly machine: SideMachine;
  readonly g: SideGeometry;
}) {
  const { front, length, height, balanceAt } = machine;
  const floor = -g.deck.height;
  return (
    <>
      {load.bestM !== null && (
        <path
          class="p-chalk"
          d={`M${at(load.bestM * 100)} ${at(floor - height - 30)}V${at(floor)}M${at(load.bestM * 100 - 11)} ${at(floor - height - 30)}h22`}
        />
      )}
      <g class={machine.isSketch ? 'p-cargo p-sketch' : 'p-cargo'} data-cargo="">
        <path
          class="p-body"
          d={`M${at(front + length * 0.06)} ${at(floor - 34)}V${at(floor - height * 0.55)}H${at(front + length * 0.34)}V${at(floor - height)}H${at(front + length * 0.8)}L${at(front + length)} ${at(floor - height * 0.5)}V${at(floor - 34)}Z`}
        />
        <Contact machine={machine} contact={load.machine?.contact ?? null} floor={floor} />
        <path class="p-plumb" d={`M${at(balanceAt)} ${at(floor - height * 0.42)}V${at(floor)}`} />
        <circle class="p-balance" cx={at(balanceAt)} cy={at(floor - height * 0.42)} r="13" />
        <path
          class="p-ink"
          d={`M${at(balanceAt)} ${at(floor - height * 0.42)}v-13a13 13 0 0 1 13 13ZM${at(balanceAt)} ${at(floor - height * 0.42)}v13a13 13 0 0 1 -13 -13Z`}
        />
        {load.massKg !== null && (
          <text class="p-on-body" x={at(front + length * 0.57)} y={at(floor - height * 0.74)} text-anchor="middle">
            {showMass(load.massKg)}
          </text>
        )}
      </g>
    </>
  );
}

function Contact({ machine, contact, floor }: { machine: SideMachine; contact: Machine['contact']; floor: number }) {
  const { front, length } = machine;
  if (contact === 'tires' || contact === 'small-wheels') {
    const r = contact === 'tires' ? 34 : 17;
    return (
      <>
        <circle class="p-tire" cx={at(front + length * 0.24)} cy={at(floor - r)} r={r} />
        <circle class="p-tire" cx={at(front + length * 0.78)} cy={at(floor - r)} r={r} />
      </>
    );
  }
  if (contact === 'pads') {
    return (
      <path class="p-steel" d={`M${at(front)} ${at(floor - 34)}h${at(length)}v34h-30v-20H${at(front + 30)}v20h-30Z`} />
    );
  }
  return (
    <rect
      class={contact === null ? 'p-tire p-dash' : 'p-tire'}
      x={at(front + length * 0.1)}
      y={at(floor - 46)}
      width={at(length * 0.8)}
      height="46"
      rx="23"
    />
  );
}

/** What coupler and axles carry, as arrows from the ground. */
function Presses({ load, g }: { readonly load: SideLoad; readonly g: SideGeometry }) {
  const [first, last] = [g.axles[0], g.axles.at(-1)];
  const isApart = load.axleN !== null && new Set(load.axleN.map((one) => Math.round(one))).size > 1;
  return (
    <>
      {load.tongueN !== null && (
        <>
          <Arrow x={0} />
          <text class="p-number" x={at(Math.max(g.left + 8, -60))} y="64">
            {showForce(load.tongueN)}
          </text>
        </>
      )}
      {load.axleN !== null && g.axles.map((axle) => <Arrow key={axle.at} x={axle.at} />)}
      {load.axleN !== null && first !== undefined && last !== undefined && (
        <text class="p-number" x={at((first.at + last.at) / 2)} y="64" text-anchor="middle">
          {isApart
            ? load.axleN.map((one) => showForce(one)).join(' · ')
            : `${load.axleN.length > 1 ? `${load.axleN.length} × ` : ''}${showForce(load.axleN[0] as Newtons)}`}
        </text>
      )}
    </>
  );
}

function Arrow({ x }: { readonly x: number }) {
  return <path class="p-arrow" d={`M${at(x)} 36V8M${at(x - 8)} 17L${at(x)} 6L${at(x + 8)} 17`} />;
}
