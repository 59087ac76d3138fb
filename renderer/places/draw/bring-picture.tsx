import { pictureWords } from '../../language/draw-first.ts';
import { Button, Progress } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** Chooses a picture file; while one is on its way, how far it is and the way to stop it. */
export function BringPicture({ label = pictureWords.bringIn }: { readonly label?: string }) {
  const { pictureIntake } = useDraw();
  const { work } = pictureIntake;
  if (work) {
    return (
      <div className="picture-work">
        <Progress
          label={work.share === null ? pictureWords.keeping : pictureWords.reading(work.name)}
          {...(work.share === null ? {} : { share: work.share })}
        />
        <Button onClick={pictureIntake.stop}>{pictureWords.stop}</Button>
      </div>
    );
  }
  return (
    <label className="button file-button" title={pictureWords.formats}>
      <input
        type="file"
        accept="image/jpeg,image/png,image/webp"
        aria-label={`${label}. ${pictureWords.formats}`}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) void pictureIntake.bringIn(file);
        }}
      />
      {label}
    </label>
  );
}
