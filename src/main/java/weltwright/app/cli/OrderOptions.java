package weltwright.app.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.units.DigitNormalizer;

/** The options for the order. */
final class OrderOptions {
    private static final Messages TEXTS = Messages.of(OrderOptions.class);

    @Option(names = "--customer", paramLabel = "NAME")
    private @Nullable String customer;

    @Option(names = "--knife", paramLabel = "NAME")
    private @Nullable String knife;

    @Option(names = "--due", paramLabel = "DATE")
    private @Nullable String due;

    @Option(names = "--notes", paramLabel = "TEXT")
    private @Nullable String notes;

    /** Returns the job with the given options applied. */
    Job applyTo(Job job) {
        return job.withOrder(
                customer == null ? job.customer() : JobFields.CUSTOMER.read(customer),
                knife == null ? job.knifeName() : JobFields.KNIFE_NAME.read(knife),
                due == null ? job.due() : Optional.of(date(due)),
                notes == null ? job.notes() : JobFields.NOTES.read(notes));
    }

    private static LocalDate date(String typed) {
        try {
            return LocalDate.parse(DigitNormalizer.ascii(typed).strip());
        } catch (DateTimeParseException e) {
            throw new UserFacingException(
                    TEXTS.text("order-options.the-day-cannot-be-read", typed),
                    TEXTS.text("order-options.write-year-month-and-day"),
                    e);
        }
    }
}
