package weltwright.app.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.trace.PhotoAssessment;

@Command(
        name = "look",
        description =
                "Looks at a photo without tracing it: what the knife lies on, where the camera was, and what would"
                        + " make a better photo. Writes nothing.",
        mixinStandardHelpOptions = true,
        abbreviateSynopsis = true,
        sortOptions = false,
        footer = {"", "It ends with code 1 where something has to be told or changed before the photo can be traced."})
final class InspectPhotoCommand implements Callable<Integer> {
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

    InspectPhotoCommand(TerminalProgress line, PhoneLensStore phones) {
        this.line = line;
        this.phones = phones;
    }

    @Override
    public Integer call() {
        Photo photo = Photo.read(file);
        PhotoAssessment look;
        try (line) {
            look = PhotoAssessment.at(
                    photo,
                    phone.over(
                            knife.over(Job.begin(LocalDate.now(ZoneId.systemDefault()))
                                    .settings()),
                            photo,
                            phones),
                    line);
        }
        TextReport.of(look, spec.commandLine().getOut());
        if (look.question().isPresent()) {
            spec.commandLine().getOut().println(CommandLineApplication.HOW_TO_TELL_THE_GROUND);
        }
        return look.question().isPresent() ? CommandLineApplication.TROUBLE : CommandLineApplication.DONE;
    }
}
