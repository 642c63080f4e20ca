package weltwright.trace;

/** Told of each step of long work. Called on the thread that works. */
@FunctionalInterface
public interface ProgressListener {
    /** Tells nobody. */
    ProgressListener NONE = (step, done) -> {};

    /**
     * Tells how far the work has come.
     *
     * @param step what begins now, in a few words
     * @param done how much of the whole is behind, from 0 to 1
     */
    void at(String step, double done);
}
