/**
 * Records chosen one after another: a list for each that is chosen, which goes on showing it, and an empty one for the next. With the arrow
 * keys a browser chooses at every step, so a list must not leave with what it held.
 */
import type { ReactNode } from 'react';
import { SelectField, type Choice } from './Fields.tsx';

export function ChainField(props: {
  /** The label of the first list, and of those after it. */
  first: string;
  next: string;
  chain: readonly string[];
  choices: readonly Choice[];
  onChange: (chain: readonly string[]) => void;
}): ReactNode {
  const { chain } = props;
  return [...chain, ''].map((chosen, index) => (
    <SelectField
      key={index}
      label={index === 0 ? props.first : props.next}
      value={chosen}
      choices={props.choices}
      onChoose={(value) => props.onChange(chain.toSpliced(index, 1, value))}
    />
  ));
}
