package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;

/**
 * Values one after another, and which of them is the present one. Going back forgets nothing until something new is
 * done.
 *
 * @param states oldest first, at least one
 * @param at index of the present one
 */
record UndoHistory<T>(List<T> states, int at) {

    UndoHistory {
        states = List.copyOf(states);
    }

    static <T> UndoHistory<T> of(T first) {
        return new UndoHistory<>(List.of(first), 0);
    }

    T present() {
        return states.get(at);
    }

    /** A step on: what had been undone is forgotten. The same value again is no step. */
    UndoHistory<T> then(T next) {
        if (next.equals(present())) {
            return this;
        }
        List<T> kept = new ArrayList<>(states.subList(0, at + 1));
        kept.add(next);
        return new UndoHistory<>(kept, at + 1);
    }

    /** The present value put in another's place, without a step of its own: it completes the step before it. */
    UndoHistory<T> amended(T present) {
        List<T> changed = new ArrayList<>(states);
        changed.set(at, present);
        return new UndoHistory<>(changed, at);
    }

    boolean canUndo() {
        return at > 0;
    }

    boolean canRedo() {
        return at < states.size() - 1;
    }

    /** One step back; itself at the beginning. */
    UndoHistory<T> undone() {
        return canUndo() ? new UndoHistory<>(states, at - 1) : this;
    }

    /** One step forward again; itself at the end. */
    UndoHistory<T> redone() {
        return canRedo() ? new UndoHistory<>(states, at + 1) : this;
    }
}
