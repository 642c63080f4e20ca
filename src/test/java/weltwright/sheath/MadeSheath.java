package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.RandomGenerator;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestPlan;
import weltwright.LongRun;
import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.SheathSpec;

/** A random knife, random choices for its sheath, and the pattern of that sheath. */
public record MadeSheath(Knife knife, SheathSpec spec, Pattern pattern) {
    /** What is said of a knife that is too slim or short for its sheath, or that would cut or not pass a fold. */
    static final String NOT_FOR_THIS_KNIFE = ".*(too slim|too short|double-edged|take in the guard|end on the guard"
            + "|cannot be left open|does not lie on the handle|too thin for a welt|hole of the welt would).*";

    private static List<MadeSheath> sample = List.of();

    /**
     * The pattern; a knife that is too slim or short for what is to hold its sheath, and one that would cut a fold, is
     * left out. So is the odd welt that the last check refuses, two of a thousand: its hole would be too near the cut.
     */
    public static Pattern of(Knife knife, SheathSpec spec) {
        try {
            return PatternMaker.make(knife, spec);
        } catch (UserFacingException trouble) {
            Assume.that(!trouble.getMessage().matches(NOT_FOR_THIS_KNIFE));
            throw trouble;
        }
    }

    /**
     * The sheaths on which all properties of patterns are checked in one run of tests, in Maven's that of a class. They
     * are made once in it, since making a pattern takes longer than checking it.
     */
    static synchronized List<MadeSheath> sample() {
        if (sample.isEmpty()) {
            sample = made(LongRun.tries(60, 1000), new Random(LongRun.seed(MadeSheath.class)));
        }
        return sample;
    }

    private static synchronized void forgetSample() {
        sample = List.of();
    }

    /** Forgets the sample before each run of tests: PIT tries many changes of the code in one process. */
    public static final class SampleListener implements TestExecutionListener {
        @Override
        public void testPlanExecutionStarted(TestPlan testPlan) {
            forgetSample();
        }
    }

    private static List<MadeSheath> made(int count, Random random) {
        RandomGenerator<Knife> knives = TestKnives.any().generator(count, true);
        RandomGenerator<SheathSpec> specs = TestSpecs.any().generator(count, true);
        List<MadeSheath> made = new ArrayList<>();
        while (made.size() < count) {
            Knife knife = knives.next(random).value();
            SheathSpec spec = specs.next(random).value();
            try {
                made.add(new MadeSheath(knife, spec, PatternMaker.make(knife, spec)));
            } catch (UserFacingException trouble) {
                if (!trouble.getMessage().matches(NOT_FOR_THIS_KNIFE)) {
                    throw trouble;
                }
            }
        }
        return List.copyOf(made);
    }

    /** Names what the pattern follows from, without the pattern's thousands of points. */
    @Override
    public String toString() {
        return knife + ", " + spec;
    }
}
