package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;

/**
 * An immutable undo history: a list of states and the index of the current one.
 *
 * @param states oldest first, at least one
 * @param index of the current state
 */
record UndoHistory<T>(List<T> states, int index) {

    UndoHistory {
        states = List.copyOf(states);
    }

    static <T> UndoHistory<T> of(T first) {
        return new UndoHistory<>(List.of(first), 0);
    }

    T current() {
        return states.get(index);
    }

    /**
     * Returns the history with a new current state after this one, without the undone states; unchanged for an equal
     * state.
     */
    UndoHistory<T> withNext(T next) {
        if (next.equals(current())) {
            return this;
        }
        List<T> kept = new ArrayList<>(states.subList(0, index + 1));
        kept.add(next);
        return new UndoHistory<>(kept, index + 1);
    }

    /** Returns the history with its current state replaced. */
    UndoHistory<T> withCurrent(T current) {
        List<T> changed = new ArrayList<>(states);
        changed.set(index, current);
        return new UndoHistory<>(changed, index);
    }

    /** Returns the history one step back, without the current state and those that were undone. */
    UndoHistory<T> withoutCurrent() {
        return new UndoHistory<>(states.subList(0, index), index - 1);
    }

    boolean canUndo() {
        return index > 0;
    }

    boolean canRedo() {
        return index < states.size() - 1;
    }

    /** Returns the history one step back; unchanged at its beginning. */
    UndoHistory<T> undone() {
        return canUndo() ? new UndoHistory<>(states, index - 1) : this;
    }

    /** Returns the history one step forward; unchanged at its end. */
    UndoHistory<T> redone() {
        return canRedo() ? new UndoHistory<>(states, index + 1) : this;
    }
}
