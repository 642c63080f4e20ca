package weltwright.window;

import java.util.Optional;
import weltwright.job.Job;
import weltwright.knife.Knife;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SewnPlan;
import weltwright.sheath.SheathSections;
import weltwright.sheath.SheathSpec;

/**
 * A knife and all that was worked out for its sheath.
 *
 * @param knife that goes in
 * @param pattern to cut
 * @param sections of the sewn sheath
 * @param plan of the sewn sheath, seen from its face
 */
record Fitted(Knife knife, Pattern pattern, SheathSections sections, SewnPlan plan) {

    /** Where its throat is, x in the knife's frame. */
    double throatMm() {
        return plan.outline().points().stream().mapToDouble(p -> p.x()).min().orElseThrow();
    }

    /** What it follows from. */
    record Asked(Knife knife, SheathSpec spec) {

        static Optional<Asked> of(Job job) {
            return job.silhouette().map(s -> new Asked(job.knife(), job.spec()));
        }

        /** Throws {@link weltwright.trouble.Trouble} where no sheath can be made so. */
        Fitted fitted() {
            PatternMaker.Made made = PatternMaker.madeUp(knife, spec);
            return new Fitted(knife, made.pattern(), made.sections(), made.plan());
        }
    }
}
