/** Where the job that was opened and the shop record differ, whoever opened it is asked: the question is fetched when there is one. */
import { lazy, Suspense, type ReactNode } from 'react';
import { useDocument, useShop } from '../../store/page.ts';

export const shopQuestion = () => import('./ShopQuestion.tsx');
const Question = lazy(async () => ({ default: (await shopQuestion()).Question }));

export function ShopAsks(): ReactNode {
  const asked = useShop((state) => state.asked);
  // Another job's questions begin anew.
  const opened = useDocument((state) => state.opened);
  if (asked.length === 0) return null;
  return (
    <Suspense fallback={null}>
      <Question key={opened} asked={asked} />
    </Suspense>
  );
}
