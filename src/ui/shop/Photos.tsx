/** Photos of the work: taken with a phone, chosen or dropped, each with its caption, its day and the tubes that it shows. */
import { useEffect, useRef, useState, type DragEvent, type ReactNode } from 'react';
import { datePhoto, namePhoto, removePhoto, showsTube } from '../../core/edit/photos.ts';
import type { Photo } from '../../core/job/kinds/photo.ts';
import { shownName } from '../../core/job/shown.ts';
import { numbered } from '../../core/words/ends.ts';
import { photos, usePhotos } from '../../store/photo-page.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { requestZip } from '../../workers/client.ts';
import { DayField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { downloadFile } from '../kit/download.ts';
import { Refused } from '../kit/Refused.tsx';

export function Photos(): ReactNode {
  const list = useDocument((state) => state.job.photos);
  const coming = usePhotos((state) => state.coming);
  const refused = usePhotos((state) => state.refused);
  const unkept = usePhotos((state) => state.unkept);
  return (
    <div className="photos" onDragOver={held} onDrop={dropped}>
      <p className="small">
        Drop pictures here, or choose them; a telephone takes one. They are made smaller, and lose where and with what
        they were taken. They stay in this browser: the job names them only.
      </p>
      {list.map((photo) => (
        <PhotoCard key={photo.id} photo={photo} />
      ))}
      {coming !== null && (
        <p role="status">
          Reading picture {coming.done + 1} of {coming.total}
        </p>
      )}
      {refused.map((why) => (
        <Refused key={why} why={why} />
      ))}
      {unkept && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          The browser did not keep all of them: they are there until the page is closed. Save the pictures.
        </p>
      )}
      <p className="row">
        <button type="button" className="press" disabled={coming !== null} onClick={choose}>
          Add photos…
        </button>
        {list.length > 0 && <SaveKey />}
      </p>
    </div>
  );
}

/** So that the window does not take it for a job file. */
function held(event: DragEvent): void {
  if (event.dataTransfer.types.includes('Files')) event.preventDefault();
}

function dropped(event: DragEvent): void {
  event.preventDefault();
  void photos.getState().add([...event.dataTransfer.files]);
}

function choose(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = 'image/*';
  input.multiple = true;
  input.addEventListener('change', () => void photos.getState().add([...(input.files ?? [])]));
  input.click();
}

/** All of them in one file, as the command line wants them: each under its sum. */
function SaveKey(): ReactNode {
  const [refusal, setRefusal] = useState('');
  async function save(): Promise<void> {
    setRefusal('');
    const there = await photos.getState().all();
    const files = [...there].map(([sum, bytes]) => ({ fileName: `photos/${sum}.jpg`, bytes }));
    if (files.length === 0) return setRefusal('None of them is in this browser.');
    const whole = { files, missing: [] };
    return requestZip('photos.zip', whole, new AbortController().signal).then(downloadFile, (error: Error) =>
      setRefusal(error.message),
    );
  }
  return (
    <>
      <button type="button" className="press press-quiet" onClick={() => void save()}>
        Save the pictures
      </button>
      <Refused why={refusal} />
    </>
  );
}

function PhotoCard({ photo }: { photo: Photo }): ReactNode {
  const { id, name, sum, on = '', tubes = [] } = photo;
  const all = useDocument((state) => state.derived.tubes);
  const shows = all.filter((tube) => tubes.includes(tube.id));
  const called = shownName(name);
  return (
    <article className="card photo" aria-label={`Photo ${called}`}>
      <Picture sum={sum} alt={called} />
      <div className="fields">
        <TextField
          label="Caption"
          value={name}
          {...jobEdit<string>(`Caption of a photo`, (job, next) => namePhoto(job, id, next))}
        />
        <DayField
          label="Day"
          value={on}
          {...jobEdit<string>(`Day of a photo`, (job, next) => datePhoto(job, id, next))}
        />
        <details>
          <summary>
            {shows.length === 0 ? 'Shows no tube yet' : `Shows ${shows.map(({ number }) => number).join(', ')}`}
          </summary>
          <ul className="photo-tubes">
            {all.map((tube) => (
              <li key={tube.id}>
                <label>
                  <input
                    type="checkbox"
                    checked={tubes.includes(tube.id)}
                    onChange={({ target }) =>
                      jobDocument
                        .getState()
                        .edit(`What a photo shows`, (job) => showsTube(job, id, tube.id, target.checked))
                    }
                  />{' '}
                  {numbered(tube)}
                </label>
              </li>
            ))}
          </ul>
        </details>
        <Command
          quiet
          destroys={id}
          step={`Take out photo ${called}`}
          label={`Take out photo ${called}`}
          run={(job) => removePhoto(job, id)}
        >
          Take it out
        </Command>
      </div>
    </article>
  );
}

function Picture({ sum, alt }: { sum: string; alt: string }): ReactNode {
  const bytes = usePhotos((state) => state.data.get(sum));
  if (bytes === null) {
    return (
      <p className="notice-warning photo-picture">
        <span aria-hidden="true">▲ </span>
        This picture is not in this browser. Add it again from the saved pictures: it is known by its bytes.
      </p>
    );
  }
  return bytes === undefined ? (
    <p className="photo-picture small">Being fetched.</p>
  ) : (
    <Drawn bytes={bytes} alt={alt} />
  );
}

function Drawn({ bytes, alt }: { bytes: Uint8Array; alt: string }): ReactNode {
  const image = useRef<HTMLImageElement>(null);
  useEffect(() => {
    const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }));
    if (image.current) image.current.src = address;
    return () => URL.revokeObjectURL(address);
  }, [bytes]);
  return <img ref={image} className="photo-picture" alt={alt} />;
}
