package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.image.Photo;
import weltwright.io.AtomicFile;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;

@Command(name = "trace", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class TraceCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(TraceCommand.class);

    private final TerminalProgress terminal;
    private final PhoneLensStore lensStore;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO", descriptionKey = "photo")
    private Path file;

    @Mixin
    private KnifeOptions knife;

    @Mixin
    private KnifeCrossSectionOptions crossSection;

    @Mixin
    private PhoneOption phone;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true)
    private Path output;

    TraceCommand(TerminalProgress terminal, PhoneLensStore lensStore) {
        this.terminal = terminal;
        this.lensStore = lensStore;
    }

    @Override
    public void run() {
        AtomicFile outputFile = AtomicFile.of(output, OutlineJson.KIND);
        outputFile.check();
        Photo photo = Photo.read(file);
        TraceSettings settings = phone.applyTo(
                crossSection.applyTo(knife.applyTo(
                        Job.begin(LocalDate.now(ZoneId.systemDefault())).settings())),
                photo,
                lensStore);
        Trace trace;
        try (terminal) {
            TraceSettings usual = settings.assumingUsual();
            trace = knife.applyTo(Tracer.trace(photo, usual, terminal), usual);
        }
        outputFile.write(out -> OutlineJson.write(trace, out));
        PrintWriter out = spec.commandLine().getOut();
        TextReport.print(trace, out);
        KnifeOptions.printAssumed(settings, out);
        out.println(TEXTS.text("trace-command.written", output));
    }
}
