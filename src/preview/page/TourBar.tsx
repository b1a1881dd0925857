import { useEffect, useRef } from 'react';
import type { Tour } from '../tour/tour';
import { tours } from '../tour/tours';

interface TourBarProps {
  readonly tour: Tour | undefined;
  /** Position of the step that is shown. */
  readonly step: number;
  readonly busy: boolean;
  onStart(tour: Tour): void;
  onStep(step: number): void;
  onClose(): void;
}

/** The tour above the sheet: first the choice of a person, then one step after the other. */
export function TourBar({ tour, step, busy, onStart, onStep, onClose }: TourBarProps) {
  const words = useRef<HTMLDivElement>(null);
  useEffect(() => words.current?.focus(), [tour, step]);

  if (!tour) {
    return (
      <section className="tour" aria-label="Tour">
        <div className="words" ref={words} tabIndex={-1}>
          <strong>Whose work do you want to see?</strong> Five steps each, on an invented workshop’s sheets.
        </div>
        {tours.map(one => (
          <button key={one.id} type="button" disabled={busy} onClick={() => onStart(one)}>
            {one.person}: {one.task}
          </button>
        ))}
        <button type="button" onClick={onClose}>
          Close
        </button>
      </section>
    );
  }
  const { title, text } = tour.steps[step]!;
  const isLast = step === tour.steps.length - 1;
  return (
    <section className="tour" aria-label="Tour">
      <div className="words" ref={words} tabIndex={-1}>
        <span className="count">
          {tour.person}, step {step + 1} of {tour.steps.length}
        </span>{' '}
        <strong>{title}.</strong> {text}
      </div>
      <button type="button" disabled={busy || step === 0} onClick={() => onStep(step - 1)}>
        Back
      </button>
      <button type="button" disabled={busy} onClick={() => (isLast ? onClose() : onStep(step + 1))}>
        {isLast ? 'Finish' : 'Next'}
      </button>
      {!isLast && (
        <button type="button" onClick={onClose}>
          Close
        </button>
      )}
    </section>
  );
}
