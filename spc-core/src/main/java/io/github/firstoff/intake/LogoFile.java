package io.github.firstoff.intake;

import io.github.firstoff.inspection.House;
import java.io.IOException;

/**
 * A logo as it was read. Whatever its file holds beside the picture (remarks of editors, profiles, anything that runs or points
 * elsewhere) goes no further than here.
 *
 * @param name the file's name
 * @param sha256 the SHA-256 of its bytes in hexadecimal
 * @param logo the picture
 */
record LogoFile(String name, String sha256, House.Logo logo) {
    /** More than the mark of a firm needs; a sheet carries it in every copy. */
    static final long LARGEST = 1024 * 1024;

    /**
     * Reads a logo.
     *
     * @throws InputRefused if it is no PNG or SVG picture that a sheet can hold
     */
    static LogoFile read(Input input) {
        byte[] bytes;
        String sha256;
        try (InputBytes stream = new InputBytes(input, LARGEST)) {
            bytes = stream.readAllBytes();
            sha256 = stream.sha256();
        } catch (TextRefused refused) {
            throw InputRefused.because(refused.fault());
        } catch (IOException failure) {
            throw InputRefused.because(input.unreadable(failure));
        }
        boolean png = PngLogo.isPng(bytes);
        byte[] kept = png ? PngLogo.kept(input.name(), bytes) : SvgLogo.kept(input.name(), bytes);
        return new LogoFile(input.name(), sha256, new House.Logo(!png, kept));
    }
}
