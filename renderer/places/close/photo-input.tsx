import { useCallback, useEffect, useId, useRef, useState } from 'react';
import type { Photo } from '#core/job/closing-entries.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { closeWords } from '../../language/close.ts';
import { Button, Checkbox, Field, ProblemNotice, Progress } from '../../parts/index.ts';
import { keepPhoto } from './keep-photo.ts';
import { KeptPhoto } from './kept-photo.tsx';
import './photo.css';

const words = closeWords.photo;

/** Photos from a file, by drop or by paste; each is made ready with progress, which can be stopped. */
export function PhotoInput({
  photos,
  onChange,
}: {
  readonly photos: readonly Photo[];
  readonly onChange: (photos: readonly Photo[]) => void;
}) {
  const id = useId();
  const [original, setOriginal] = useState(false);
  const [work, setWork] = useState<{ readonly name: string; readonly share: number } | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [over, setOver] = useState(false);
  const stopper = useRef<AbortController | null>(null);
  const box = useRef<HTMLFieldSetElement | null>(null);
  const newest = useRef({ photos, onChange, original });
  newest.current = { photos, onChange, original };

  const take = useCallback(async (files: readonly File[]): Promise<void> => {
    for (const file of files) {
      const stop = new AbortController();
      stopper.current = stop;
      setProblem(null);
      setWork({ name: file.name, share: 0 });
      const kept = await keepPhoto(file, newest.current.original, {
        signal: stop.signal,
        onProgress: (share) => setWork({ name: file.name, share }),
      });
      setWork(null);
      if (kept.ok) newest.current.onChange(withPhoto(newest.current.photos, kept.value));
      else {
        if (kept.problem.code !== 'stopped') setProblem(kept.problem);
        break;
      }
    }
  }, []);

  useEffect(() => {
    const paste = (event: ClipboardEvent): void => {
      const files = pictures(event.clipboardData?.files);
      if (files.length === 0 || box.current !== pasteBox()) return;
      event.preventDefault();
      void take(files);
    };
    document.addEventListener('paste', paste);
    return () => {
      document.removeEventListener('paste', paste);
      stopper.current?.abort();
    };
  }, [take]);

  return (
    <fieldset
      ref={box}
      className={`photo-input${over ? ' photo-input-over' : ''}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        void take(pictures(event.dataTransfer.files));
      }}
    >
      <legend className="only-read-aloud">{words.add}</legend>
      <div className="button-row">
        <label className="button" htmlFor={id}>
          {words.add}
        </label>
        <input
          id={id}
          className="only-read-aloud"
          type="file"
          accept="image/*"
          multiple
          onChange={(event) => {
            void take(pictures(event.target.files));
            event.target.value = '';
          }}
        />
        <Checkbox label={words.original} checked={original} onChange={setOriginal} />
      </div>
      <p className="field-hint">{words.hint}</p>
      {work ? (
        <div className="button-row">
          <Progress label={words.working(work.name)} share={work.share} />
          <Button onClick={() => stopper.current?.abort()}>{words.stop}</Button>
        </div>
      ) : null}
      {problem ? <ProblemNotice problem={problem} /> : null}
      <ul className="photo-list">
        {photos.map((photo, i) => (
          <li key={photo.sha256}>
            <KeptPhoto sha256={photo.sha256} alt={words.alt(i + 1, photo.caption)} />
            <Field
              label={words.caption(i + 1)}
              value={photo.caption}
              maxLength={400}
              onChange={(caption) =>
                onChange(photos.map((each) => (each === photo ? { ...each, caption } : each)))
              }
            />
            <Button onClick={() => onChange(photos.filter((each) => each !== photo))}>{words.remove}</Button>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

const pictures = (files: FileList | null | undefined): File[] =>
  [...(files ?? [])].filter((file) => file.type.startsWith('image/'));

/** The same photo given twice is one photo. */
const withPhoto = (photos: readonly Photo[], photo: Photo): readonly Photo[] =>
  photos.some(({ sha256 }) => sha256 === photo.sha256) ? photos : [...photos, photo];

/** Several forms may wait for a photo: a paste is for the one worked in, else pointed at, else the first. */
function pasteBox(): Element | null {
  const boxes = [...document.querySelectorAll('.photo-input')];
  const worked = boxes.find((each) => each.closest('form')?.contains(document.activeElement));
  return worked ?? boxes.find((each) => each.closest('form')?.matches(':hover')) ?? boxes[0] ?? null;
}
