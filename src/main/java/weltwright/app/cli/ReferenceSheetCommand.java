package weltwright.app.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.message.Messages;
import weltwright.output.print.SheetPdf;

@Command(name = "sheet", mixinStandardHelpOptions = true)
final class ReferenceSheetCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(ReferenceSheetCommand.class);

    @Spec
    private CommandSpec spec;

    @Option(names = "--page", paramLabel = "PAGE", defaultValue = "a4")
    private ReferenceSheet page;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true)
    private Path output;

    @Override
    public void run() {
        SheetPdf.write(page, output);
        spec.commandLine().getOut().println(TEXTS.text("reference-sheet-command.written", output));
    }
}
