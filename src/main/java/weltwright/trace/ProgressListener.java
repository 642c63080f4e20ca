package weltwright.trace;

/** Receives the steps of a long task, on the thread that runs it. */
@FunctionalInterface
public interface ProgressListener {
    /** Ignores all steps. */
    ProgressListener NONE = (step, done) -> {};

    /**
     * Called at the beginning of a step.
     *
     * @param step description of the step, in a few words
     * @param done completed part of the task, from 0 to 1
     */
    void at(String step, double done);
}
