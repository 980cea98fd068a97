# The command line as a container: docker run --rm -v "$PWD:/plans:ro" laygate check /plans/job.yaml
FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
RUN apt-get update && apt-get install -y --no-install-recommends clang zlib1g-dev && rm -rf /var/lib/apt/lists/*
WORKDIR /source
COPY . .
RUN dotnet publish src/Laygate.Cli -c Release -o /program && rm -f /program/*.pdb /program/*.dbg /program/*.xml

FROM mcr.microsoft.com/dotnet/runtime-deps:10.0
LABEL org.opencontainers.image.title="laygate" \
      org.opencontainers.image.description="Checks a job plan for laying hot asphalt before the shift" \
      org.opencontainers.image.licenses="Apache-2.0"
COPY --from=build /program /opt/laygate
USER $APP_UID
WORKDIR /plans
ENTRYPOINT ["/opt/laygate/laygate"]
CMD ["--help"]
