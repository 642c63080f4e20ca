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
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;

@Command(
        name = "trace",
        description =
                "Traces the outline of a knife photographed on the reference sheet or another ground of known size,"
                        + " and writes it in mm as JSON.",
        mixinStandardHelpOptions = true,
        abbreviateSynopsis = true,
        sortOptions = false,
        footer = {
            "",
            "heel: where the cutting edge begins, next to the handle. butt: the far end of the handle. error95: 95 of"
                    + " 100 points of the outline lie within this many mm of the true one."
        })
final class TraceCommand implements Runnable {
    private final TerminalProgress line;
    private final PhoneLensStore phones;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO", description = "A JPEG, PNG, TIFF, BMP or WebP file.")
    private Path file;

    @Mixin
    private KnifeOptions knife;

    @Mixin
    private PhoneOption phone;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true,
            description = "The JSON file to write.")
    private Path output;

    TraceCommand(TerminalProgress line, PhoneLensStore phones) {
        this.line = line;
        this.phones = phones;
    }

    @Override
    public void run() {
        AtomicFile traced = AtomicFile.of(output, OutlineJson.KIND);
        traced.check();
        Photo photo = Photo.read(file);
        TraceSettings settings = phone.over(
                knife.over(Job.begin(LocalDate.now(ZoneId.systemDefault())).settings()), photo, phones);
        Trace trace;
        try (line) {
            trace = knife.told(Tracer.trace(photo, settings, line));
        }
        traced.write(out -> OutlineJson.write(trace, out));
        PrintWriter say = spec.commandLine().getOut();
        TextReport.of(trace, say);
        knife.remindOfHandleThickness(settings, say);
        say.println("Written: " + output);
    }
}
