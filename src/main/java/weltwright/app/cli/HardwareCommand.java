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
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;

@Command(name = "hardware", mixinStandardHelpOptions = true)
final class HardwareCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(HardwareCommand.class);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", arity = "0..1", descriptionKey = "job")
    private @Nullable Path job;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true)
    private Path output;

    @Override
    public void run() {
        HardwareFile.write(
                job == null ? HardwareList.USUAL : JobFile.read(job).spec().hardware(), output);
        spec.commandLine().getOut().println(TEXTS.text("hardware-command.written", output));
    }
}
