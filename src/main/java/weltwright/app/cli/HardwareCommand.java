package weltwright.app.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.job.HardwareFile;
import weltwright.job.JobFile;
import weltwright.sheath.hardware.HardwareList;

@Command(
        name = "hardware",
        description =
                "Writes a list of rivets, snaps, eyelets and rings for you to change into what you have, and to give"
                        + " to make as --hardware.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "For each: post, the diameter of what goes through the leather; cap, that of what lies on it; grip_from and"
                    + " grip_to, the thinnest and the thickest leather that it holds. All in mm. What you like best stands"
                    + " first: of what fits, the first is taken."
        })
final class HardwareCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "JOB",
            arity = "0..1",
            description = "A job (.wwj) whose list to write; without one, a list of usual sizes.")
    private @Nullable Path job;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true,
            description = "The list to write (.json).")
    private Path output;

    @Override
    public void run() {
        HardwareFile.write(
                job == null ? HardwareList.USUAL : JobFile.read(job).spec().hardware(), output);
        spec.commandLine().getOut().println("Written: " + output);
    }
}
