import { type Caller, may } from '../../use-cases/caller.js';
import type { MachinesScreen } from '../../use-cases/show/show-machines.js';
import { showFeet, showForce, showLength, showMass } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { Head, Page } from '../page.js';
import { BASIS_WORDS, CONTACT_WORDS } from '../words/build-words.js';

interface MachinesProps {
  readonly caller: Caller;
  readonly screen: MachinesScreen;
  readonly said: string | null;
}

type Machine = MachinesScreen['machines'][number];

export function MachinesPage({ caller, screen, said }: MachinesProps) {
  const mayChange = may(caller, 'shop');
  const names = new Map(screen.machines.map((machine) => [machine.id, machine.name]));
  const link = (machine: Machine) =>
    mayChange ? <a href={`/machines/${machine.id}`}>{machine.name}</a> : machine.name;
  return (
    <Page title="Machines and tow vehicles" caller={caller} door="Jobs" at="below" said={said}>
      <Head
        title="Machines and tow vehicles"
        lede="Machines as really hauled: with attachments, fuel and dirt. A scale ticket beats the brochure."
      >
        {mayChange && (
          <>
            <a class="button button-main" href="/machines/new">
              Add a machine
            </a>
            <a class="button" href="/tow-vehicles/new">
              Add a tow vehicle
            </a>
          </>
        )}
      </Head>
      <h2 class="chalked">Machines</h2>
      {screen.machines.length === 0 ? (
        <p class="empty">No machine is on file.</p>
      ) : (
        <Table
          caption="What gets carried"
          rows={screen.machines}
          rowKey={(machine) => machine.id}
          columns={[
            { label: 'Machine', lead: true, cell: link },
            {
              label: 'Weight',
              right: true,
              cell: (machine) =>
                machine.massKg === null ? <span class="unknown">unknown</span> : showMass(machine.massKg),
            },
            { label: 'Known how', cell: (machine) => (machine.massKg === null ? '' : BASIS_WORDS[machine.basis]) },
            { label: 'Length', cell: (machine) => (machine.lengthM === null ? '' : showFeet(machine.lengthM)) },
            { label: 'Width', cell: (machine) => (machine.widthM === null ? '' : showLength(machine.widthM)) },
            { label: 'Stands on', cell: (machine) => (machine.contact === null ? '' : CONTACT_WORDS[machine.contact]) },
            {
              label: 'Note',
              cell: (machine) =>
                [
                  machine.retiredOn === null ? null : 'replaced',
                  machine.replacesMachineId === null
                    ? null
                    : `took over from ${names.get(machine.replacesMachineId) ?? 'another'}`,
                ]
                  .filter((part) => part !== null)
                  .join(', '),
            },
          ]}
        />
      )}
      <h2 class="chalked">Tow vehicles</h2>
      {screen.towVehicles.length === 0 ? (
        <p class="empty">No tow vehicle is on file.</p>
      ) : (
        <Table
          caption="What pulls"
          rows={screen.towVehicles}
          rowKey={(vehicle) => vehicle.id}
          columns={[
            {
              label: 'Tow vehicle',
              lead: true,
              cell: (vehicle) =>
                mayChange ? <a href={`/tow-vehicles/${vehicle.id}`}>{vehicle.name}</a> : vehicle.name,
            },
            {
              label: 'GVWR',
              right: true,
              cell: (vehicle) => (vehicle.gvwrKg === null ? '' : showMass(vehicle.gvwrKg)),
            },
            {
              label: 'GCWR',
              right: true,
              cell: (vehicle) => (vehicle.gcwrKg === null ? '' : showMass(vehicle.gcwrKg)),
            },
            {
              label: 'Hitch',
              right: true,
              cell: (vehicle) => (vehicle.hitchRatingKg === null ? '' : showMass(vehicle.hitchRatingKg)),
            },
            {
              label: 'On the hitch',
              right: true,
              cell: (vehicle) => (vehicle.hitchTongueN === null ? '' : showForce(vehicle.hitchTongueN)),
            },
            { label: 'Ball', cell: (vehicle) => (vehicle.ballSizeM === null ? '' : showLength(vehicle.ballSizeM)) },
          ]}
        />
      )}
    </Page>
  );
}
