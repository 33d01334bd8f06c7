/** What the dossier wants beside the drawing: certificates by heat, and photos. */
import type { ReactNode } from 'react';
import { Certificates } from './Certificates.tsx';
import { Photos } from './Photos.tsx';
import './papers.css';

export default function Papers(): ReactNode {
  return (
    <>
      <h4>Batches and certificates</h4>
      <Certificates />
      <h4>Photos</h4>
      <Photos />
    </>
  );
}
