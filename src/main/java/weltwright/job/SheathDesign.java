package weltwright.job;

import java.util.Optional;
import weltwright.knife.Knife;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.planform.SewnPlanView;
import weltwright.sheath.planform.SheathSections;
import weltwright.sheath.spec.SheathSpec;

/**
 * A knife with the pattern of its sheath and the geometry of the sewn sheath.
 *
 * @param knife in its frame
 * @param pattern pieces to cut
 * @param sections cross-sections of the sewn sheath
 * @param plan plan view of the sewn sheath from its face
 */
public record SheathDesign(Knife knife, Pattern pattern, SheathSections sections, SewnPlanView plan) {

    /** The abscissa of the throat in the knife's frame. */
    public double throatMm() {
        return plan.outline().points().stream().mapToDouble(p -> p.x()).min().orElseThrow();
    }

    /** The input from which a design is computed. */
    public record Input(Knife knife, SheathSpec spec) {

        /** The input of a job; empty while it has no silhouette, or handle or spine are not measured. */
        public static Optional<Input> of(Job job) {
            return job.silhouette()
                    .filter(s -> job.settings().isMeasured())
                    .map(s -> new Input(job.knife(), job.spec()));
        }

        /**
         * Computes the design.
         *
         * @throws weltwright.error.UserFacingException if no sheath can be made to the choices
         */
        public SheathDesign design() {
            PatternMaker.Made made = PatternMaker.madeUp(knife, spec);
            return new SheathDesign(knife, made.pattern(), made.sections(), made.plan());
        }
    }
}
