/** On a telephone: the way to the list of tubes to make. */
import { useEffect, useRef, type ReactNode } from 'react';
import { forgetToMake, openToMake, useToMake } from '../bending/to-make.ts';
import { useNarrow } from '../kit/useNarrow.ts';

export function ToMakeKey(): ReactNode {
  const narrow = useNarrow();
  const isLeft = useToMake() === 'left';
  const key = useRef<HTMLButtonElement>(null);
  // Whoever comes back stands where they went in.
  useEffect(() => {
    if (!isLeft) return;
    key.current?.focus();
    forgetToMake();
  }, [isLeft]);
  if (!narrow) return null;
  return (
    <button ref={key} type="button" className="press to-make-door" onClick={openToMake}>
      Tubes to make, one by one
    </button>
  );
}
