import { boardView } from "../report/board/board-view.js";
import { reportContext } from "../report/document/context.js";
import { method } from "../report/document/method.js";
import type { ToldOdds } from "../report/odds/odds-words.js";
import { chartsView } from "../report/print/charts.js";
import type { Picture } from "../report/print/pictures.js";
import type { StudyRun } from "../study/prepare/compute.js";

/** One statement and one picture, or a few lines. */
interface Slide {
  readonly statement: string;
  readonly picture?: string;
  readonly lines?: readonly string[];
}

/** Pages for a screen, one statement with its picture on each. @param pictures of the same run's report */
export function slidesView(run: StudyRun, pictures: readonly Picture[], told: ToldOdds | undefined): object {
  const { study } = run.document;
  const slides = slidesOf(run, told);
  const svgOf = (name: string | undefined) => pictures.find((picture) => picture.name === name)?.svg;
  return {
    title: study.name,
    authority: study.authority,
    invented: study.invented,
    slides: slides.map(({ statement, picture, lines = [] }, index) => ({
      number: index + 1,
      opening: index === 0,
      statement,
      svg: svgOf(picture),
      lines,
      back: index === 0 ? undefined : index,
      next: index + 1 === slides.length ? undefined : index + 2,
    })),
  };
}

function slidesOf(run: StudyRun, told: ToldOdds | undefined): Slide[] {
  const context = reportContext(run);
  const board = boardView(context);
  const charts = chartsView(context);
  const chartSlide = ({ title, id }: { title: string; id: string }): Slide => ({
    statement: title,
    picture: id.replace(/^chart-/, ""),
  });
  const figures = board.figures.map(({ label, value }) => `${label}: ${value}`);
  return [
    { statement: board.question, lines: figures },
    { statement: board.answer, picture: "balance" },
    ...[charts.levels, charts.structures, charts.yearly, charts.cumulative].map(chartSlide),
    ...(told ? [{ statement: "What matters most", lines: told.matters }] : []),
    { statement: board.asked, lines: board.changes },
    { statement: method.standing, lines: method.leftOut.map((each) => `Left out: ${each}`) },
  ];
}
