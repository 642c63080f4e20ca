package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.job.PriceFile;
import weltwright.layout.cost.PriceList;
import weltwright.message.Messages;

/** Reads prices for what is made without them too. */
final class PriceWarning {
    private static final Messages TEXTS = Messages.of(PriceWarning.class);

    private PriceWarning() {}

    /** The prices; empty where none are set. Where the file is broken, says so and that the cost is left out. */
    static Optional<PriceList> ifReadable(Path file, PrintWriter out) {
        try {
            return PriceFile.ifSet(file);
        } catch (UserFacingException broken) {
            out.println(TEXTS.text("price-warning.the-cost-is-left-out", broken.getMessage()));
            return Optional.empty();
        }
    }
}
