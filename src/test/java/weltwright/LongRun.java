package weltwright;

import java.util.concurrent.ThreadLocalRandom;

/**
 * How much the tests do that try things at random: a little in every build, all of it under the Maven profile
 * {@code long-run}. Each such test prints its seed; {@code -Dseed=…} runs it again with that one.
 */
public final class LongRun {
    private LongRun() {}

    /** How often to try, in every build and in a long run. */
    public static int tries(int inEveryBuild, int inALongRun) {
        return Boolean.getBoolean("long-run") ? inALongRun : inEveryBuild;
    }

    /**
     * A new seed, or the one that was asked for.
     *
     * @param test the test that prints it
     */
    public static long seed(Class<?> test) {
        long seed = Long.getLong("seed", ThreadLocalRandom.current().nextLong(1_000_000_000));
        System.out.println(test.getSimpleName() + ": seed " + seed);
        return seed;
    }
}
