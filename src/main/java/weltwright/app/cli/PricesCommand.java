package weltwright.app.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.job.PriceFile;
import weltwright.message.Messages;

@Command(name = "prices", mixinStandardHelpOptions = true)
final class PricesCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(PricesCommand.class);

    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE")
    private @Nullable Path output;

    @Override
    public void run() {
        Path file = output == null ? PriceFile.standard() : output;
        if (Files.exists(file)) {
            throw new UserFacingException(
                    TEXTS.text("prices-command.there-are-prices-in-already", file),
                    TEXTS.text("prices-command.change-those-in-a-text"));
        }
        PriceFile.write(PriceFile.blank(), file);
        spec.commandLine().getOut().println(TEXTS.text("prices-command.written", file));
    }
}
