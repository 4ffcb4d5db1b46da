package org.bookholder.testing;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.By;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;

@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class BrowserTest {
    private static final byte[] PAGE = "<!doctype html><title>A page</title>".getBytes(StandardCharsets.UTF_8);

    private HttpServer server;

    @BeforeEach
    void serve() throws IOException {
        Browser.needed();
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", asked -> {
            asked.getResponseHeaders().add("Content-Type", "text/html");
            asked.sendResponseHeaders(200, PAGE.length);
            asked.getResponseBody().write(PAGE);
            asked.close();
        });
        server.start();
    }

    @AfterEach
    void stop() {
        if (server != null) {
            server.stop(0);
        }
    }

    /** Not even a page that asks before it is left stays. */
    @Test
    void aBrowserThatIsUsedAgainKnowsNothingOfTheTestBefore() {
        String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
        ChromeDriver driver = Drivers.take();
        try {
            driver.get(address);
            driver.switchTo().newWindow(WindowType.TAB);
            driver.get(address);
            driver.executeScript(
                    "document.cookie = 'a=b'; localStorage.setItem('a', 'b'); sessionStorage.setItem('a', 'b');"
                            + " console.error('wrong'); addEventListener('beforeunload', asks => asks.preventDefault());"
                            + " document.body.innerHTML = '<button>A button</button>'");
            driver.findElement(By.cssSelector("button")).click();
            Drivers.makeLikeNew(driver);
            assertThat(driver.getWindowHandles()).hasSize(1);
            assertThat(driver.getCurrentUrl()).doesNotContain("127.0.0.1");
            driver.get(address);
            assertThat(driver.executeScript("return [document.cookie, localStorage.length, sessionStorage.length]"))
                    .isEqualTo(List.of("", 0L, 0L));
            assertThat(driver.manage().logs().get("browser").getAll())
                    .noneMatch(entry -> entry.getMessage().contains("wrong"));
        } finally {
            Drivers.giveBack(driver);
        }
    }

    /** Else a look at a page would prove nothing. */
    @Test
    void faultsOfAPageAreFoundAndToldByTheirHtml() throws IOException {
        try (Browser browser = new Browser()) {
            browser.open("http://127.0.0.1:" + server.getAddress().getPort() + "/");
            browser.value("(document.documentElement.lang = 'en', document.body.innerHTML ="
                    + " '<button></button><p style=\"color: #eee; background: #fff\">Pale</p>')");
            assertThat(browser.seriousFaults())
                    .hasSize(2)
                    .anyMatch(fault -> fault.startsWith("button-name: <button>"))
                    .anyMatch(fault -> fault.startsWith("color-contrast: <p ") && fault.contains("contrast of"));
            assertThat(browser.faultsOfColour()).hasSize(1).allMatch(fault -> fault.startsWith("color-contrast: <p "));
        }
    }
}
