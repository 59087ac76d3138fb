import { chafingPlaces } from '#core/job/chafing-places.ts';
import { figuresByModel, shopFigures } from '#core/job/shop-figures.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { mapNamesOfJobs } from '#db/job-list-store.ts';
import { factsOfJobs } from '#db/job-recall-store.ts';
import { searchJobs } from '#db/job-search-store.ts';
import { learnFromClosed } from '#db/learn-lessons.ts';
import { mapOfJob, sumLessons } from '#db/lesson-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

/** More than anyone reads; a search is then made narrower. */
const mostSearched = 200;

/** Closed jobs worked out at a time, and how long one request may go on with them. */
const jobsAtATime = 4;
const learningMs = 80;

/** The requests about past jobs: search, the shop's figures, what they teach, where a model chafes. */
export function pastHandlers({
  connection,
}: HostMeans): Pick<Handlers, 'jobs.search' | 'shop.figures' | 'jobs.taught' | 'map.past'> {
  return {
    'jobs.search': ({ words, mapId }) => {
      const { jobs, total } = searchJobs(connection, words, mapId ?? null, mostSearched);
      return ok({ jobs: [...jobs], left: total - jobs.length });
    },
    'shop.figures': () => {
      // How well one finds is told by one's own jobs; where a model chafes, by everybody's.
      const facts = factsOfJobs(connection, null).filter(({ handedOn }) => !handedOn);
      const names = mapNamesOfJobs(connection);
      const models = [...figuresByModel(facts)].map(([mapId, figures]) => ({
        mapId,
        mapName: names.get(mapId) ?? '',
        ...figures,
      }));
      return ok({ overall: shopFigures(facts), models });
    },
    'jobs.taught': ({ jobId }) => {
      const mapId = mapOfJob(connection, jobId);
      if (!mapId) return fail({ code: 'not-found', thing: jobId });
      const end = performance.now() + learningMs;
      let waiting: number;
      do waiting = learnFromClosed(connection, mapId, jobsAtATime);
      while (waiting > 0 && performance.now() < end);
      return ok({ sums: sumLessons(connection, mapId, jobId), waiting });
    },
    'map.past': ({ mapId }) => {
      const facts = factsOfJobs(connection, mapId);
      const own = facts.filter(({ handedOn }) => !handedOn);
      return ok({ figures: shopFigures(own), places: [...chafingPlaces(facts)] });
    },
  };
}
