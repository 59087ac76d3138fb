import { starterWords } from '../../language/draw-first.ts';
import { BringPicture } from './bring-picture.tsx';
import { StarterForm } from './starter-form.tsx';

/** On an empty board: the two quick ways to begin. */
export function FirstSteps() {
  return (
    <section className="first-steps" aria-label={starterWords.title}>
      <h2>{starterWords.title}</h2>
      <p className="quiet">{starterWords.lead}</p>
      <StarterForm />
      <BringPicture label={starterWords.picture} />
    </section>
  );
}
