package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import weltwright.trace.outline.UncertainStretch;

/** A stretch of the traced outline with a weak edge, counter-clockwise. */
@JsonNaming(SnakeCaseStrategy.class)
record UncertainStretchJson(PairJson from, PairJson to) {

    static UncertainStretchJson of(UncertainStretch unsure) {
        return new UncertainStretchJson(PairJson.of(unsure.from()), PairJson.of(unsure.to()));
    }

    UncertainStretch unsure() {
        return new UncertainStretch(from.place(), to.place());
    }
}
