import { parseArgs } from 'node:util';
import { rank } from '#core/job/rank.ts';
import { digWords } from '#renderer/language/dig.ts';
import { problemSentence } from '#renderer/language/problems.ts';
import { digJson } from './dig-json.ts';
import { digText } from './dig-text.ts';
import { nameAndId } from './name-of.ts';
import { type FileProblem, readDocuments } from './read-documents.ts';

process.exitCode = dig(process.argv.slice(2));

/** Ranks the two documents and prints the answer. Gives the exit code: 0, or 1 where it could not. */
function dig(args: readonly string[]): number {
  const asked = readArgs(args);
  if (typeof asked === 'string') {
    console.error(`${asked}\n\n${digWords.usage}`);
    return 1;
  }
  if (asked.help) {
    console.log(digWords.usage);
    return 0;
  }
  const documents = readDocuments(asked.mapFile, asked.jobFile);
  if (!documents.ok) return refuse(documents.problem);
  const { map, job } = documents.value;
  const ranking = rank(map, job, { withTests: true });
  if (!ranking.ok) {
    const file = isAboutJob(ranking.problem.code) ? asked.jobFile : asked.mapFile;
    return refuse({ file, problem: ranking.problem, map });
  }
  console.log(
    asked.json ? JSON.stringify(digJson(map, ranking.value), null, 2) : digText(map, job, ranking.value),
  );
  return 0;
}

interface Asked {
  readonly mapFile: string;
  readonly jobFile: string;
  readonly json: boolean;
  readonly help: boolean;
}

/** What was asked for, or a sentence about what is wrong with the asking. */
function readArgs(args: readonly string[]): Asked | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
    });
    const [mapFile = '', jobFile = ''] = positionals;
    if (!values.help && positionals.length !== 2) {
      return digWords.twoDocuments(positionals.length);
    }
    return { mapFile, jobFile, json: values.json ?? false, help: values.help ?? false };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function refuse({ file, problem, map }: FileProblem): number {
  const { message, hint } = problemSentence(problem, (id) => nameAndId(map, id));
  console.error(`${file}\n${message}\n${hint}`);
  return 1;
}

function isAboutJob(code: string): boolean {
  return code.startsWith('job-');
}
