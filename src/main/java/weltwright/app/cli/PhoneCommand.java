package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.camera.lens.CalibratedLens;
import weltwright.ground.sheet.LensCalibration;
import weltwright.image.Photo;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.units.PrintScale;

@Command(name = "phone", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class PhoneCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(PhoneCommand.class);

    private final TerminalProgress terminal;
    private final PhoneLensStore lensStore;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO", arity = LensCalibration.FEWEST_PHOTOS + "..*", descriptionKey = "photo")
    private List<Path> files;

    @Option(names = "--name", paramLabel = "NAME")
    private @Nullable String name;

    @Option(names = "--sheet-bars", paramLabel = "ACROSS,DOWN")
    private @Nullable String sheetBars;

    PhoneCommand(TerminalProgress terminal, PhoneLensStore lensStore) {
        this.terminal = terminal;
        this.lensStore = lensStore;
    }

    @Override
    public void run() {
        PrintScale scale = sheetBars == null ? PrintScale.TRUE : LengthPair.SHEET_BARS.readScale(sheetBars);
        List<Photo> photos = files.stream().map(Photo::read).toList();
        CalibratedLens lens;
        try (terminal) {
            terminal.at(TEXTS.text("phone-command.measuring-the-lens"), 0.1);
            lens = LensCalibration.of(photos, Optional.ofNullable(name), scale);
        }
        Path file = lensStore.put(lens);
        PrintWriter out = spec.commandLine().getOut();
        out.println(TEXTS.text(
                "phone-command.focal-length-mm-in-35",
                lens.name(),
                lens.focal35mm(),
                196 * lens.errors().focal(),
                lens.k1(),
                1.96 * lens.errors().k1(),
                lens.k2(),
                1.96 * lens.errors().k2()));
        out.println(
                lens.camera().isPresent()
                        ? TEXTS.text("phone-command.later-photos-that-name-the")
                        : TEXTS.text("phone-command.these-photos-do-not-name", lens.name()));
        out.println(TEXTS.text("phone-command.written", file));
    }
}
