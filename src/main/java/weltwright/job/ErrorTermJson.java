package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;

/** A term of a trace's error in a job file: its source or, where that is null, the text of an older version. */
@JsonNaming(SnakeCaseStrategy.class)
record ErrorTermJson(
        @JsonSetter(nulls = Nulls.SET) ErrorSource.@Nullable Known source,
        double error95,
        @JsonSetter(nulls = Nulls.SET) @Nullable FreeText freeText) {

    record FreeText(String cause, String remedy) {}

    static ErrorTermJson of(ErrorBudget.Part part) {
        return part.source() instanceof ErrorSource.FreeText words
                ? new ErrorTermJson(null, part.error95Mm(), new FreeText(words.cause(), words.remedy()))
                : new ErrorTermJson((ErrorSource.Known) part.source(), part.error95Mm(), null);
    }

    ErrorBudget.Part part() {
        if (source != null && freeText == null) {
            return new ErrorBudget.Part(source, error95);
        }
        if (source == null && freeText != null) {
            return new ErrorBudget.Part(new ErrorSource.FreeText(freeText.cause, freeText.remedy), error95);
        }
        throw new IllegalArgumentException("a part of the error with not one source");
    }
}
