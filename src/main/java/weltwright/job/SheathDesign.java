package weltwright.job;

import java.util.Optional;
import weltwright.knife.Knife;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.planform.SewnPlanView;
import weltwright.sheath.planform.SheathSections;
import weltwright.sheath.spec.SheathSpec;

/**
 * A knife and all that was worked out for its sheath.
 *
 * @param knife that goes in
 * @param pattern to cut
 * @param sections of the sewn sheath
 * @param plan of the sewn sheath, seen from its face
 */
public record SheathDesign(Knife knife, Pattern pattern, SheathSections sections, SewnPlanView plan) {

    /** Where its throat is, x in the knife's frame. */
    public double throatMm() {
        return plan.outline().points().stream().mapToDouble(p -> p.x()).min().orElseThrow();
    }

    /** What it follows from. */
    public record Asked(Knife knife, SheathSpec spec) {

        public static Optional<Asked> of(Job job) {
            return job.silhouette().map(s -> new Asked(job.knife(), job.spec()));
        }

        /** Throws {@link weltwright.error.UserFacingException} where no sheath can be made so. */
        public SheathDesign fitted() {
            PatternMaker.Made made = PatternMaker.madeUp(knife, spec);
            return new SheathDesign(knife, made.pattern(), made.sections(), made.plan());
        }
    }
}
