package weltwright.licence;

/**
 * A library or a font that is shipped, with its licence.
 *
 * @param artifactId Maven's name of the artifact it is or lies in
 * @param version of that artifact
 * @param licence SPDX identifiers of the licences it may be used under, joined by " or "
 * @param text notices and licence text in full
 */
public record LicensedComponent(String name, String artifactId, String version, String licence, String text) {}
