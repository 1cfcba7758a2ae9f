import type { Attachment } from 'svelte/attachments';
import type { Point } from './columns.ts';

interface Pointing {
  /** Over a place of the drawing; null when the pointer or the focus is gone. */
  onpoint: (at: Point | null) => void;
  /** A click or a tap. */
  ontake: (at: Point) => void;
  /** Whether the key did anything. */
  onkey: (event: KeyboardEvent) => boolean;
}

/** Lets pointer and keys show a place of a drawing and take it; no drag is needed. */
export function pointing({ onpoint, ontake, onkey }: Pointing): Attachment<HTMLElement> {
  return (element) => {
    const placeOf = (event: MouseEvent): Point => {
      const { left, top } = element.getBoundingClientRect();
      return { x: event.clientX - left, y: event.clientY - top };
    };
    const gone = new AbortController();
    const { signal } = gone;
    element.addEventListener('pointermove', (event) => onpoint(placeOf(event)), { signal });
    element.addEventListener('pointerleave', () => onpoint(null), { signal });
    element.addEventListener('blur', () => onpoint(null), { signal });
    element.addEventListener('click', (event) => ontake(placeOf(event)), { signal });
    element.addEventListener(
      'keydown',
      (event) => {
        if (event.ctrlKey || event.altKey || event.metaKey) return;
        if (onkey(event)) event.preventDefault();
      },
      { signal },
    );
    return () => gone.abort();
  };
}
