package weltwright.sheath;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Provide;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.spec.SheathSpec;

/** For properties of any sheath for any knife: where the values of "knives", "specs" and "sheaths" come from. */
public interface RandomSheaths {
    @Provide
    default Arbitrary<Knife> knives() {
        return TestKnives.any();
    }

    @Provide
    default Arbitrary<SheathSpec> specs() {
        return TestSpecs.any();
    }

    /** Sheaths whose pattern is made; a property without a number of tries is checked on each of them. */
    @Provide
    default Arbitrary<MadeSheath> sheaths() {
        return Arbitraries.of(MadeSheath.sample());
    }
}
