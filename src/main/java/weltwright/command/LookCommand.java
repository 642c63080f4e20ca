package weltwright.command;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.job.Job;
import weltwright.job.PhoneShelf;
import weltwright.photo.Photo;
import weltwright.trace.FirstLook;

@Command(
        name = "look",
        description =
                "Looks at a photo without tracing it: what the knife lies on, where the camera was, and what would"
                        + " make a better photo. Writes nothing.",
        mixinStandardHelpOptions = true,
        abbreviateSynopsis = true,
        sortOptions = false,
        footer = {"", "It ends with code 1 where something has to be told or changed before the photo can be traced."})
final class LookCommand implements Callable<Integer> {
    private final TerminalLine line;
    private final PhoneShelf phones;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO", description = "A JPEG, PNG, TIFF, BMP or WebP file.")
    private Path file;

    @Mixin
    private KnifeOptions knife;

    @Mixin
    private PhoneOption phone;

    LookCommand(TerminalLine line, PhoneShelf phones) {
        this.line = line;
        this.phones = phones;
    }

    @Override
    public Integer call() {
        Photo photo = Photo.read(file);
        FirstLook look;
        try (line) {
            look = FirstLook.at(
                    photo,
                    phone.over(
                            knife.over(Job.begin(LocalDate.now(ZoneId.systemDefault()))
                                    .settings()),
                            photo,
                            phones),
                    line);
        }
        Report.of(look, spec.commandLine().getOut());
        if (look.question().isPresent()) {
            spec.commandLine().getOut().println(Commands.HOW_TO_TELL_THE_GROUND);
        }
        return look.question().isPresent() ? Commands.TROUBLE : Commands.DONE;
    }
}
