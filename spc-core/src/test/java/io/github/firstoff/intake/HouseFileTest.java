package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.inspection.House;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HouseFileTest {
    private static final String HOUSE = "{\"schema\": \"firstoff-house-1\", \"name\": \"Hollin Quay Deck Gear\"%s}";
    private static final String SVG = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\">%s</svg>";

    private static HouseFile read(String json, byte[] logo) {
        Input input = Input.bytes(
                "house.json",
                json.getBytes(StandardCharsets.UTF_8),
                name -> Optional.of(Input.bytes(name, logo, other -> Optional.empty())));
        return HouseFile.read(input, List.of("en", "de"));
    }

    private static HouseFile withLogo(byte[] logo) {
        return read(HOUSE.formatted(", \"logo\": \"logo\""), logo);
    }

    private static HouseFile withSvg(String content) {
        return withLogo(SVG.formatted(content).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aHouseNeedsNoMoreThanAName() {
        House house = read(HOUSE.formatted(""), new byte[0]).house();
        assertThat(house.firm().name()).isEqualTo("Hollin Quay Deck Gear");
        assertThat(house.logo()).isEmpty();
        assertThat(house.paper()).isEmpty();
    }

    @Test
    void everyKeyIsRead() {
        House house = read(
                        HOUSE.formatted(", \"address\": \"Slip Lane 4\\nHollin Quay\", \"approvals\": \"ISO 9001\","
                                + " \"signOff\": \"Kept.\", \"paper\": \"Letter\", \"language\": \"DE\""),
                        new byte[0])
                .house();
        assertThat(house.firm().address()).contains("Slip Lane 4\nHollin Quay");
        assertThat(house.approvals()).contains("ISO 9001");
        assertThat(house.signOff()).contains("Kept.");
        assertThat(house.paper()).contains(House.Paper.LETTER);
        assertThat(house.language()).contains("de");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                ", \"paper\": \"a5\"; a4",
                ", \"language\": \"xx\"; en",
                ", \"adress\": \"x\"; address",
            })
    void whatIsNotUnderstoodIsRefusedWithWhatIs(String more, String expected) {
        assertThatThrownBy(() -> read(HOUSE.formatted(more), new byte[0]))
                .isInstanceOf(InputRefused.class)
                .satisfies(fault -> assertThat(String.join("\n", ((InputRefused) fault).lines()))
                        .contains("house.json:1")
                        .contains(expected));
    }

    @Test
    void shapesAreKeptAndEverythingElseOfAPictureIsNot() {
        byte[] kept = withSvg("<!-- by an editor --><title>mark</title><metadata><x xmlns='urn:x'/></metadata>"
                        + "<g style='fill:#123456;-x-note:1'><path d='M0 0 L5 5 z' id='a' class='b'/></g>")
                .house()
                .logo()
                .orElseThrow()
                .bytes();
        assertThat(new String(kept, StandardCharsets.UTF_8))
                .isEqualTo("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\"><g fill=\"#123456\">"
                        + "<path d=\"M0 0 L5 5 z\"></path></g></svg>");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>1</script>",
                "<defs><script>1</script></defs>",
                "<rect width='1' height='1' onload='x()'/>",
                "<image href='http://example.org/a.png'/>",
                "<a href='http://example.org'><rect width='1' height='1'/></a>",
                "<path d='M0 0' fill='url(http://example.org/a.svg#b)'/>",
                "<path d='M0 0' style='fill:url(#b)'/>",
                "<foreignObject/>",
                "<style>@import 'http://example.org/a.css';</style>",
                "<text>Hollin Quay</text>",
                "<use href='#a'/>",
                "<filter/>",
                "<rect width='1' height='1' opacity='0.5'/>",
                "<animate/>",
                "<path d='&x;'/>"
            })
    void whatRunsOrPointsElsewhereOrUnfoldsIsRefused(String content) {
        assertThatThrownBy(() -> withSvg(content)).isInstanceOf(InputRefused.class);
    }

    @Test
    void declaredEntitiesAreNotUnfolded() {
        String bomb =
                "<!DOCTYPE svg [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]>" + SVG.formatted("<g>&b;</g>");
        assertThatThrownBy(() -> withLogo(bomb.getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(InputRefused.class);
    }

    @Test
    void aPictureOfThousandsOfShapesIsRefused() {
        assertThatThrownBy(() -> withSvg("<path d='M0 0'/>".repeat(2100)))
                .isInstanceOf(InputRefused.class)
                .satisfies(fault -> assertThat(String.join("\n", ((InputRefused) fault).lines()))
                        .contains("more than 2000"));
    }

    private static byte[] png(int width, int height) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB), "png", out);
        return out.toByteArray();
    }

    @Test
    void aPngIsKept() throws IOException {
        House.Logo logo = withLogo(png(40, 20)).house().logo().orElseThrow();
        assertThat(logo.isVector()).isFalse();
        BufferedImage image = ImageIO.read(new java.io.ByteArrayInputStream(logo.bytes()));
        assertThat(image.getWidth()).isEqualTo(40);
    }

    @Test
    void aDamagedCutOrHugePngIsRefused() throws IOException {
        byte[] whole = png(40, 20);
        for (int cut = 9; cut < whole.length; cut += 3) {
            byte[] part = java.util.Arrays.copyOf(whole, cut);
            assertThatThrownBy(() -> withLogo(part)).isInstanceOf(InputRefused.class);
        }
        byte[] flipped = whole.clone();
        flipped[whole.length / 2] ^= 1;
        assertThatThrownBy(() -> withLogo(flipped)).isInstanceOf(InputRefused.class);
        assertThatThrownBy(() -> withLogo(png(4001, 1)).house()).isInstanceOf(InputRefused.class);
        assertThatThrownBy(() -> withLogo(new byte[1024 * 1024 + 1])).isInstanceOf(InputRefused.class);
        assertThatThrownBy(() -> withLogo("MZ".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(InputRefused.class);
    }
}
