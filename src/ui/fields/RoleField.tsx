/** What a bar is in the cage: one of the trade's roles from a list, or a word of the shop's own. */
import { useState, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { plainRole, ROLES } from '../../core/job/role.ts';
import { roleInWords } from '../../core/words/rules.ts';
import { SelectField, TextField } from './Fields.tsx';

/** No role has a blank in it. */
const OWN = 'another word';
const CHOICES = [
  { value: '', label: 'none' },
  ...ROLES.map((role) => ({ value: role, label: roleInWords(role) })),
  { value: OWN, label: `${OWN}…` },
];

export function RoleField(props: {
  label: string;
  role: string;
  commit: (role: string) => readonly Fault[];
}): ReactNode {
  const { label, role, commit } = props;
  const [typing, type] = useState(false);
  const known = ROLES.find((each) => plainRole(each) === plainRole(role));
  const isOwn = typing || (role !== '' && known === undefined);
  return (
    <>
      <SelectField
        label={label}
        value={isOwn ? OWN : (known ?? '')}
        choices={CHOICES}
        onChoose={(value) => {
          type(value === OWN);
          if (value !== OWN) commit(value);
        }}
      />
      {isOwn && (
        <TextField
          label="In your own word"
          value={known === undefined ? role : ''}
          mayBeEmpty
          takesFocus={typing}
          commit={commit}
        />
      )}
    </>
  );
}
