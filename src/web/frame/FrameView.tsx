import type { FrameView as Frame } from '../../jobs/views/frameView.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';
import { FrameDrawing } from './FrameDrawing.tsx';

/** The frame: the sensor area, the circle, the delivery's lines, squeezed as recorded and widened as seen. */
export function FrameView() {
  const looking = useLooking();
  return looking === undefined ? <NoSetup /> : <Drawn looking={looking} />;
}

function Drawn({ looking }: { readonly looking: Looking }) {
  const view = useView(() => desk.frameView(looking), [looking.setup, looking.glass]);
  return (
    <section className="frame-view" aria-label="Frame">
      <SetupBar looking={looking} />
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {view?.ok === true && <Found frame={view.value} />}
    </section>
  );
}

function Found({ frame }: { readonly frame: Frame }) {
  const system = useSystem();
  const mm = (value: number) => printAmount({ value, unit: 'mm' }, system);
  const px = (width: number, height: number) => `${Math.round(width)} × ${Math.round(height)} px`;
  const rows = [
    ['recorded', px(frame.canvasWidthPx, frame.canvasHeightPx), `${mm(frame.sensorWidthMm)} × ${mm(frame.sensorHeightMm)}, ${frame.modeName}`],
    ['widened', `${printNumber(frame.canvasAspect, 3)} to 1`, `squeeze ${printNumber(frame.squeeze)}`],
    ['frame', px(frame.frame.widthPx, frame.frame.heightPx), `${mm(frame.frameWidthMm)} × ${mm(frame.frameHeightMm)}; ${frame.cuts === 'nothing' ? 'cuts nothing' : `cuts ${frame.cuts}`}${frame.protection > 0 ? `, ${printNumber(frame.protection * 100)} % kept free` : ''}`],
    ['as seen', px(frame.shownWidthPx, frame.frame.heightPx), `${printNumber(frame.usedFraction * 100)} % of what is recorded`],
    ['delivered', px(frame.deliveredWidthPx, frame.deliveredLines), `${printNumber(frame.aspect)} to 1`],
    ['circle', frame.imageCircleMm === undefined ? '–' : mm(frame.imageCircleMm), frame.imageCircleMm === undefined ? 'not entered yet' : `of ${frame.lensName ?? 'the lens'}; diagonal ${mm(Math.hypot(frame.sensorWidthMm, frame.sensorHeightMm))}`],
    ...(frame.light === undefined && frame.noLight === undefined ? [] : [['corner', frame.light === undefined ? '–' : `${printNumber((frame.light.shares.at(-1) ?? 1) * 100, 2)} %`, frame.light === undefined ? (frame.noLight ?? '') : `of the light passes block and focuser in the far corner, at f/${printNumber(frame.light.fNumber)}`] as const]),
  ] as const;
  return (
    <>
      <div className="frame-drawings">
        <FrameDrawing frame={frame} widened={false} title="as recorded" />
        {frame.squeeze !== 1 && <FrameDrawing frame={frame} widened title="as seen" />}
      </div>
      <table className="sum">
        <tbody>
          {rows.map(([label, value, from]) => <tr key={label}><th scope="row">{label}</th><td className="figure">{value}</td><td>{from}</td></tr>)}
        </tbody>
      </table>
    </>
  );
}
