/** What is wanted now and then: earlier versions, another job, the shop record, the phone at the bender, the unit, the light, the keys, the cautions. */
import { useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { jobDocument, useDocument } from '../store/page.ts';
import type { LengthUnit } from '../core/units/length.ts';
import { COMMANDS } from './commands.ts';
import type { Command, DialogName } from './commands.ts';
import { menuIcon } from './icons.tsx';
import { isDim, setDim } from './light.ts';
import { canSend } from './send.ts';

const UNITS: readonly { readonly unit: LengthUnit; readonly name: string }[] = [
  { unit: 'in', name: 'Inches' },
  { unit: 'mm', name: 'mm' },
];

export function Menu({ showDialog }: { readonly showDialog: (dialog: DialogName) => void }): ReactNode {
  const list = useRef<HTMLDivElement>(null);
  const item = (command: Command, className?: string): ReactNode => (
    <button
      type="button"
      className={className}
      onClick={() => {
        list.current?.hidePopover();
        command.run(showDialog);
      }}
    >
      {command.name}
    </button>
  );
  return (
    <>
      <button type="button" className="band-key menu-key" popoverTarget="menu" aria-label="Menu">
        {menuIcon}
      </button>
      <div id="menu" className="menu" popover="auto" ref={list} role="group" aria-label="Menu">
        {item(COMMANDS.open, 'narrow-only')}
        {item(COMMANDS.save, 'narrow-only')}
        {canSend() && item(COMMANDS.send)}
        {item(COMMANDS.versions)}
        {item(COMMANDS.newJob)}
        {item(COMMANDS.demo)}
        {item(COMMANDS.shopRecord)}
        {item(COMMANDS.pairing)}
        <UnitChoice />
        <LightChoice />
        {item(COMMANDS.keys)}
        {item(COMMANDS.about)}
      </div>
    </>
  );
}

function UnitChoice(): ReactNode {
  const lengthUnit = useDocument((state) => state.job.lengthUnit);
  const change = (unit: LengthUnit): void => {
    jobDocument.getState().edit('Change unit', (job) => ({ ...job, lengthUnit: unit }));
  };
  return (
    <fieldset className="choice">
      <legend>Units</legend>
      {UNITS.map(({ unit, name }) => (
        <label key={unit}>
          <input type="radio" name="length-unit" checked={lengthUnit === unit} onChange={() => change(unit)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

function LightChoice(): ReactNode {
  const [dim, change] = useState(isDim);
  const choose = (next: boolean): void => {
    setDim(next);
    change(next);
  };
  return (
    <fieldset className="choice">
      <legend>Shop light</legend>
      <label>
        <input type="radio" name="shop-light" checked={!dim} onChange={() => choose(false)} />
        Bright
      </label>
      <label>
        <input type="radio" name="shop-light" checked={dim} onChange={() => choose(true)} />
        Dim
      </label>
    </fieldset>
  );
}
