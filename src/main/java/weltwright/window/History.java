package weltwright.window;

import java.util.ArrayList;
import java.util.List;

/**
 * Values one after another, and which of them is the present one. Going back forgets nothing until something new is
 * done.
 *
 * @param states oldest first, at least one
 * @param at index of the present one
 */
record History<T>(List<T> states, int at) {

    History {
        states = List.copyOf(states);
    }

    static <T> History<T> of(T first) {
        return new History<>(List.of(first), 0);
    }

    T present() {
        return states.get(at);
    }

    /** A step on: what had been undone is forgotten. The same value again is no step. */
    History<T> then(T next) {
        if (next.equals(present())) {
            return this;
        }
        List<T> kept = new ArrayList<>(states.subList(0, at + 1));
        kept.add(next);
        return new History<>(kept, at + 1);
    }

    /** The present value put in another's place, without a step of its own: it completes the step before it. */
    History<T> amended(T present) {
        List<T> changed = new ArrayList<>(states);
        changed.set(at, present);
        return new History<>(changed, at);
    }

    boolean canUndo() {
        return at > 0;
    }

    boolean canRedo() {
        return at < states.size() - 1;
    }

    /** One step back; itself at the beginning. */
    History<T> undone() {
        return canUndo() ? new History<>(states, at - 1) : this;
    }

    /** One step forward again; itself at the end. */
    History<T> redone() {
        return canRedo() ? new History<>(states, at + 1) : this;
    }
}
