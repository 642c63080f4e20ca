package weltwright.output;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import weltwright.message.Messages;

/**
 * The data of the order that are printed on each page.
 *
 * @param customer may be empty
 * @param knifeName may be empty
 * @param date day on which the job was begun
 * @param notes free text, printed once; may be empty
 */
public record PageHeading(String customer, String knifeName, LocalDate date, String notes) {
    private static final Messages TEXTS = Messages.of(PageHeading.class);

    /** Knife, customer and date (ISO 8601) on one line. */
    public String line() {
        return String.join(
                " · ",
                Stream.of(knifeName, customer, date.toString())
                        .filter(s -> !s.isBlank())
                        .toList());
    }

    /** The title of a document. */
    public String title() {
        List<String> known =
                Stream.of(knifeName, customer).filter(s -> !s.isBlank()).toList();
        return known.isEmpty()
                ? TEXTS.text("page-heading.sheath-pattern")
                : TEXTS.text("page-heading.sheath-pattern-2", String.join(", ", known));
    }
}
