package weltwright.layout.search;

import org.jspecify.annotations.Nullable;

/**
 * How long a search may go on: by the clock, or by a number of passes. With the same seed and a number of passes the
 * result is the same on any machine; by the clock it is as good as the machine is fast.
 */
public final class Budget {
    private final double limit;
    private final boolean timed;
    private final @Nullable Budget whole;
    private final Runnable eachPass;
    private final long startNanos;
    private long passes;

    private Budget(double limit, boolean timed, @Nullable Budget whole, Runnable eachPass) {
        this.limit = limit;
        this.timed = timed;
        this.whole = whole;
        this.eachPass = eachPass;
        startNanos = System.nanoTime();
    }

    /** A budget of time that begins now. */
    public static Budget seconds(double seconds) {
        return new Budget(seconds, true, null, () -> {});
    }

    /** A budget of passes, each of which moves every shape that overlaps once. */
    public static Budget passes(long passes) {
        return passes(passes, () -> {});
    }

    /**
     * A budget of passes that tells of each.
     *
     * @param eachPass called on the thread of the search; it may wait, or end the search by an exception
     */
    public static Budget passes(long passes, Runnable eachPass) {
        return new Budget(passes, false, null, eachPass);
    }

    /** A share of this budget, between 0 and 1, that begins now. What it uses counts for this one too. */
    public Budget part(double share) {
        return new Budget(limit * share, timed, this, () -> {});
    }

    void count(int more) {
        passes += more;
        eachPass.run();
        if (whole != null) {
            whole.count(more);
        }
    }

    /** The part of the budget that is used up: 1 or more at its end. */
    public double used() {
        return (timed ? (System.nanoTime() - startNanos) * 1e-9 : passes) / limit;
    }
}
