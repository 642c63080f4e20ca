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

@Command(name = "look", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class InspectPhotoCommand implements Callable<Integer> {
    private final TerminalProgress terminal;
    private final PhoneLensStore lensStore;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO", descriptionKey = "photo")
    private Path file;

    @Mixin
    private KnifeOptions knife;

    @Mixin
    private PhoneOption phone;

    InspectPhotoCommand(TerminalProgress terminal, PhoneLensStore lensStore) {
        this.terminal = terminal;
        this.lensStore = lensStore;
    }

    @Override
    public Integer call() {
        Photo photo = Photo.read(file);
        PhotoAssessment assessment;
        try (terminal) {
            assessment = PhotoAssessment.at(
                    photo,
                    phone.applyTo(
                            knife.applyTo(Job.begin(LocalDate.now(ZoneId.systemDefault()))
                                    .settings()),
                            photo,
                            lensStore),
                    terminal);
        }
        TextReport.print(assessment, spec.commandLine().getOut());
        if (assessment.question().isPresent()) {
            spec.commandLine().getOut().println(CommandLineApplication.groundOptionHint());
        }
        return assessment.question().isPresent() ? CommandLineApplication.USER_ERROR : CommandLineApplication.SUCCESS;
    }
}
