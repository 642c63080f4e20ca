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

@Command(name = "prices", mixinStandardHelpOptions = true)
final class PricesCommand implements Runnable {
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
                    "There are prices in " + file + " already.", "Change those in a text editor, or remove the file.");
        }
        PriceFile.write(PriceFile.blank(), file);
        spec.commandLine().getOut().println("Written: " + file);
    }
}
