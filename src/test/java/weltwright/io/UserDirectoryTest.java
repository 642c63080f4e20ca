package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** XDG Base Directory Specification 0.8; File System Programming Guide; Known Folders. */
class UserDirectoryTest {
    private static final UnaryOperator<String> NOTHING_SET = name -> null;

    @Test
    void followsXdgElsewhere() {
        assertThat(UserDirectory.STATE.path("Linux", "/home/a", NOTHING_SET))
                .isEqualTo(Path.of("/home/a/.local/state/weltwright"));
        assertThat(UserDirectory.SETTINGS.path("Linux", "/home/a", NOTHING_SET))
                .isEqualTo(Path.of("/home/a/.config/weltwright"));
        assertThat(UserDirectory.CACHE.path("Linux", "/home/a", NOTHING_SET))
                .isEqualTo(Path.of("/home/a/.cache/weltwright"));
        Map<String, String> set =
                Map.of("XDG_STATE_HOME", "/s", "XDG_CONFIG_HOME", "/c", "XDG_CACHE_HOME", "/fast/cache");
        assertThat(UserDirectory.STATE.path("Linux", "/home/a", set::get)).isEqualTo(Path.of("/s/weltwright"));
        assertThat(UserDirectory.SETTINGS.path("Linux", "/home/a", set::get)).isEqualTo(Path.of("/c/weltwright"));
        assertThat(UserDirectory.CACHE.path("Linux", "/home/a", set::get)).isEqualTo(Path.of("/fast/cache/weltwright"));
        assertThat(UserDirectory.CACHE.path("Linux", "/home/a", name -> "not/absolute"))
                .isEqualTo(Path.of("/home/a/.cache/weltwright"));
    }

    @Test
    void followsTheGuideOnMacOs() {
        assertThat(UserDirectory.STATE.path("Mac OS X", "/Users/a", NOTHING_SET))
                .isEqualTo(Path.of("/Users/a/Library/Logs/Weltwright"));
        assertThat(UserDirectory.SETTINGS.path("Mac OS X", "/Users/a", NOTHING_SET))
                .isEqualTo(Path.of("/Users/a/Library/Application Support/Weltwright"));
        assertThat(UserDirectory.CACHE.path("Mac OS X", "/Users/a", NOTHING_SET))
                .isEqualTo(Path.of("/Users/a/Library/Caches/Weltwright"));
    }

    @Test
    void followsTheKnownFoldersOnWindows() {
        Map<String, String> set = Map.of("APPDATA", "/roaming", "LOCALAPPDATA", "/local");
        assertThat(UserDirectory.STATE.path("Windows 11", "/u", set::get)).isEqualTo(Path.of("/local/Weltwright"));
        assertThat(UserDirectory.SETTINGS.path("Windows 11", "/u", set::get)).isEqualTo(Path.of("/roaming/Weltwright"));
        assertThat(UserDirectory.CACHE.path("Windows 11", "/u", set::get))
                .isEqualTo(Path.of("/local/Weltwright/Cache"));
        assertThat(UserDirectory.SETTINGS.path("Windows 11", "/u", NOTHING_SET))
                .isEqualTo(Path.of("/u/AppData/Roaming/Weltwright"));
    }
}
